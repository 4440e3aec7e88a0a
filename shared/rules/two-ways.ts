import { byId } from "../board/ids.ts";
import type { Zone } from "../circuit/model.ts";
import { nodeId } from "../wiring/buses.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** True where a ring ends in two ways: some cycle through the ways lands on more than one, and each could feed a ring. */
function isRingEnds({ shape, sources }: Zone): boolean {
  if (sources.some(({ ratingA }) => ratingA !== undefined && ratingA < ringLimits.leastDeviceA)) return false;
  const ways = new Set(sources.map(({ station }) => station));
  return shape.rings.some(({ runs }) => {
    const ends = runs.flatMap(({ cables }) =>
      cables.flatMap((cable) => [cable.fromStation, cable.toStation]),
    );
    return new Set(ends.filter((station) => ways.has(station))).size > 1;
  });
}

/** The lines of two ways meet: neither device makes the circuit dead. */
export const twoWays: Rule = {
  id: "two-ways",
  variants: { line: "danger", "ring-ends": "danger" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "314.4", checked: "from memory" },
  check: (model) =>
    model.zones.flatMap((zone) => {
      if (zone.isFused || zone.sources.length < 2) return [];
      const ways = zone.sources.map(({ station }) => station);
      const lines = ways.flatMap((way) => {
        const contacts = model.buses.nodes.get(nodeId(way, "L"))?.contacts ?? [];
        return contacts.flatMap((contact) => (model.conductorsAt.get(contact) ?? []).map(({ id }) => id));
      });
      const causes = [...allAt("station", ways), ...allAt("conductor", [...new Set(lines)].sort(byId))];
      return evidence(isRingEnds(zone) ? "ring-ends" : "line", causes, { ways }, allAt("station", ways));
    }),
};
