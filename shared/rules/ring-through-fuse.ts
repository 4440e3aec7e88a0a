import type { CircuitModel } from "../circuit/model.ts";
import { fusePassages } from "../circuit/fuse-passages.ts";
import { cablesBeyond } from "../circuit/open-legs.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

/** Load sides with more than one fuse before them, and fuses between two live parts. */
function fedTwice(model: CircuitModel): Evidence[] {
  const several = model.zones.flatMap(({ isFused, sources }) => {
    const units = allAt(
      "station",
      sources.map(({ station }) => station),
    );
    return isFused && units.length > 1 ? evidence("parallel", units) : [];
  });
  const between = model.fusedLinks.flatMap(({ fcu, to }) =>
    to.sources.some(({ station }) => station === fcu) ? [] : evidence("parallel", [at("station", fcu)]),
  );
  return [...several, ...between];
}

/**
 * A ring that goes in at the supply and out at the load of a connection unit; dangerous where two fuses, or a fuse
 * and the unfused side, feed one load side, for then no fuse protects it.
 */
export const ringThroughFuse: Rule = {
  id: "ring-through-fuse",
  variants: { through: "fix", parallel: "danger" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "433.1.204", checked: "secondary copy" },
  check: (model) => [
    ...fusePassages(model).flatMap(({ fcu, zone, isRing }) => {
      const unit = at("station", fcu);
      if (!isRing) return evidence("parallel", [unit]);
      const legs = allAt("cable", cablesBeyond(zone, zone.spurs.legs));
      return evidence("through", [unit, ...legs], {}, [unit]);
    }),
    ...fedTwice(model),
  ],
};
