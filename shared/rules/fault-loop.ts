import type { CircuitModel } from "../circuit/model.ts";
import { type CircuitLoops, earthLoopsOf } from "../electrical/earth-loops.ts";
import { worstOf } from "../electrical/worst-of.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import { allAt, at, evidence } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Evidence, Rule } from "./rule.ts";

/** A fault to earth that is not cut off in time, or only by the RCD. One finding an answer and a device or fuse. */
export const faultLoop: Rule = {
  id: "fault-loop",
  variants: { never: "danger", "rcd-only": "query", tt: "danger", electrode: "note" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "411.3.2, 411.4.4 and 411.5.3",
    checked: "secondary copy",
  },
  check: (model) => {
    const { circuits, gaps } = earthLoopsOf(model);
    const found = circuits.flatMap(({ zones, loops, device }) =>
      zones.flatMap((zone) =>
        (["never", "tt", "rcd-only"] as const).flatMap((answer) => {
          const here = loops
            .filter((loop) => loop.zone === zone && loop.answer === answer)
            .sort((a, b) => b.zsOhm - a.zsOhm);
          const worst = worstOf(here, ({ zsOhm }) => zsOhm);
          const [first] = worst;
          if (!first) return [];
          const { zsOhm, limitOhm = 0 } = first;
          if (answer === "tt") {
            return evidence(answer, [at("station", device.way)], { zsOhm, limitV: rcdLimits.mostTouchV });
          }
          const causes = allAt(
            "station",
            worst.map(({ station }) => station),
          );
          const places = allAt(
            "station",
            here.map(({ station }) => station),
          );
          return evidence(answer, causes, { zsOhm, limitOhm }, places);
        }),
      ),
    );
    return [...found, ...unsteadyElectrode(model, circuits), ...gapsToMissing(gaps)];
  },
};

/** An electrode whose resistance may rise: said once, of all circuits for which it is still low enough. */
function unsteadyElectrode(model: CircuitModel, circuits: readonly CircuitLoops[]): Evidence[] {
  const { earthing, electrodeOhm = 0 } = model.wiring.supply ?? {};
  const mostOhm = rcdLimits.stableElectrodeMostOhm;
  if (earthing !== "TT" || electrodeOhm <= mostOhm) return [];
  const held = circuits.filter(({ loops }) => loops.some(({ answer }) => answer === "in-time"));
  return evidence(
    "electrode",
    allAt(
      "station",
      held.map(({ device }) => device.way),
    ),
    { electrodeOhm, mostOhm },
  );
}
