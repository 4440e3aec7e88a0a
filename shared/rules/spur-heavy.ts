import { isRingCircuit } from "../circuit/zone-kinds.ts";
import { allAt, evidence } from "./evidence.ts";
import { lackingSizes } from "./lacking-sizes.ts";
import type { Rule } from "./rule.ts";

/** A branch from a ring in cable that carries the device, to several points: protected, and to be justified. */
export const spurHeavy: Rule = {
  id: "spur-heavy",
  variants: { several: "query" },
  source: {
    kind: "guidance",
    document: "BS 7671:2018",
    clause: "Appendix 15; On-Site Guide 7.2.2",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones
      .filter((zone) => isRingCircuit(model, zone))
      .flatMap((zone) => [
        ...zone.spurs.heavy.flatMap((branch) => {
          const beyond = zone.shape.branches.slice(branch.index, branch.end);
          const cables = allAt(
            "cable",
            branch.run.cables.map(({ id }) => id),
          );
          const points = allAt(
            "station",
            beyond.filter(({ isPoint }) => isPoint).map(({ far }) => far),
          );
          return evidence("several", cables, {}, [...points, ...cables]);
        }),
        ...lackingSizes(zone, ({ depth }) => depth === 1),
      ]),
};
