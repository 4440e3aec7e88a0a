import { byId, type StationId } from "../board/ids.ts";
import type { Ring, Run } from "../circuit/model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** Stations of a block where more than two of its runs meet. */
function junctions({ runs }: Ring): Set<StationId> {
  const meets = new Map<StationId, number>();
  for (const { a, b } of runs) for (const end of [a, b]) meets.set(end, (meets.get(end) ?? 0) + 1);
  return new Set([...meets].filter(([, count]) => count > 2).map(([station]) => station));
}

/** Runs that may be the bridge: single leads where there are any, or else those straight between two junctions. */
function bridges(ring: Ring, meeting: ReadonlySet<StationId>): Run[] {
  const single = ring.runs.filter(({ classes }) => classes.size === 1);
  return single.length > 0 ? single : ring.runs.filter(({ a, b }) => meeting.has(a) && meeting.has(b));
}

/** A cable makes a short cut across a ring: the legs no longer share, and the three-step test cannot prove it. */
export const ringBridged: Rule = {
  id: "ring-bridged",
  variants: { bridged: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "433.1.204 and 643.2.1",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones.flatMap(({ shape, ways }) =>
      shape.rings.flatMap((ring) => {
        if (!ring.isBridged) return [];
        const meeting = junctions(ring);
        const found = bridges(ring, meeting);
        const cables = allAt(
          "cable",
          found.flatMap((run) => run.cables.map(({ id }) => id)),
        );
        const isSingle = found.some(({ classes }) => classes.size === 1);
        const places = [...cables, ...allAt("station", [...meeting].sort(byId))];
        return evidence("bridged", isSingle ? cables : allAt("station", ways), {}, places);
      }),
    ),
};
