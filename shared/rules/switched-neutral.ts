import { switchedNeutrals } from "../circuit/switched-neutrals.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A plate switch that breaks the neutral: the lamp is dark and live. */
export const switchedNeutral: Rule = {
  id: "switched-neutral",
  variants: { neutral: "danger" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "132.14.1 and 530.3.2",
    checked: "from memory",
  },
  check: (model) =>
    switchedNeutrals(model).flatMap(({ switch: station, conductors, lamps }) =>
      evidence("neutral", allAt("conductor", conductors), { switch: station }, [
        ...allAt("station", lamps),
        at("station", station),
      ]),
    ),
};
