import type { StationId } from "../board/ids.ts";
import type { Meeting } from "../circuit/model.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** True where a ring ends in two ways: some cycle through the ways lands on more than one, and each could feed a ring. */
function isRingEnds({ zones }: Meeting): boolean {
  return zones.some(({ shape, sources, isFused }) => {
    const isSmall = sources.some(({ ratingA }) => ratingA !== undefined && ratingA < ringLimits.leastDeviceA);
    if (isFused || isSmall) return false;
    const ways = new Set(sources.map(({ station }) => station));
    return shape.rings.some(({ cables }) => {
      const ends = new Set<StationId>();
      for (const { fromStation, toStation } of cables)
        for (const station of [fromStation, toStation]) if (ways.has(station)) ends.add(station);
      return ends.size > 1;
    });
  });
}

/** The lines of two ways meet, by cable or through a fuse: neither device makes the circuit dead. */
export const twoWays: Rule = {
  id: "two-ways",
  variants: { line: "danger", "ring-ends": "danger" },
  // Its text as quoted at https://www.voltimum.co.uk/news/wiring-consumer-units-and
  source: { kind: "regulation", document: "BS 7671:2018", clause: "314.4", checked: "secondary copy" },
  check: (model) =>
    model.meetings.flatMap((meeting) => {
      const { ways, units } = meeting;
      const variant = isRingEnds(meeting) ? "ring-ends" : "line";
      const places = allAt("station", [...ways, ...units]);
      return evidence(variant, places, { ways }, places);
    }),
};
