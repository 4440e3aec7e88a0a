import { byId, type StationId } from "../board/ids.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import { nodeId, type NodeId } from "../wiring/buses.ts";
import type { Lamp } from "./model.ts";
import type { ReachTable } from "./reach.ts";

/** The two terminals of a lighting point: a rose's lamp hangs between switched line and neutral. */
const lampTerminals = ({ id, kind }: Station): { live: NodeId; neutral: NodeId } | undefined => {
  if (kind === "luminaire") return { live: nodeId(id, "L"), neutral: nodeId(id, "N") };
  if (kind === "ceiling-rose") return { live: nodeId(id, "SL"), neutral: nodeId(id, "N") };
  return undefined;
};

/**
 * The lighting points a conductor lands on, in the order of their ids. A lamp is lit where line reaches one
 * terminal and neutral the other; a switch controls it where moving that switch alone changes it.
 */
export const lampsOf = (
  stations: Iterable<Station>,
  used: ReadonlySet<StationId>,
  table: ReachTable,
): Lamp[] => {
  const all = [...stations];
  const byStation = new Map(all.map((station) => [station.id, station]));
  return all
    .flatMap((station): Lamp[] => {
      const terminals = lampTerminals(station);
      if (!terminals || !used.has(station.id)) return [];
      const { live, neutral } = terminals;
      const reach = table.reachOf(live);
      const hasNeutral = table.reachOf(neutral).sometimes.length > 0;
      const positions = table.positionsOf(live);
      return [
        {
          station: station.id,
          live,
          neutral,
          isLitSometimes: hasNeutral && reach.sometimes.length > 0,
          isLitAlways: hasNeutral && reach.isPermanent,
          controlledBy: positions
            ? controllers(positions.switches, positions.isReachedIn, reach.sometimes)
            : [],
          halfControlledBy:
            positions && hasNeutral
              ? halfControllers(positions.switches, positions.isReachedIn, byStation)
              : [],
        },
      ];
    })
    .sort((a, b) => byId(a.station, b.station));
};

function controllers(
  switches: readonly StationId[],
  isReachedIn: readonly boolean[],
  sometimes: readonly StationId[],
): StationId[] {
  // Not enumerated: every switch of so large a cluster counts, so that no lamp is called uncontrolled by mistake.
  if (isReachedIn.length === 0) return sometimes.length > 0 ? [...switches] : [];
  return switches.filter((_, bit) =>
    isReachedIn.some((isReached, position) => isReached !== isReachedIn[position ^ (1 << bit)]),
  );
}

/** True for a switch that works with another one on the same lamps: two-way or intermediate. */
export const isOfAPair = (station: Station | undefined): boolean =>
  station?.settings?.switching === "two-way" || station?.settings?.switching === "intermediate";

/** Two-way and intermediate switches that change the lamp in some positions of the others of their kind and not in all. */
function halfControllers(
  switches: readonly StationId[],
  isReachedIn: readonly boolean[],
  stations: ReadonlyMap<StationId, Station>,
): StationId[] {
  const pairBits = switches.flatMap((id, bit) => (isOfAPair(stations.get(id)) ? [bit] : []));
  const pairMask = pairBits.reduce((mask, bit) => mask | (1 << bit), 0);
  return pairBits.flatMap((bit) => {
    // A one-way switch in the same line may turn all of them off: each of its positions is looked at by itself.
    const changes = new Map<number, Set<boolean>>();
    isReachedIn.forEach((isReached, position) => {
      const others = position & ~pairMask;
      const known = changes.get(others) ?? new Set<boolean>();
      changes.set(others, known.add(isReached !== isReachedIn[position ^ (1 << bit)]));
    });
    return [...changes.values()].some(({ size }) => size > 1) ? (switches[bit] ?? []) : [];
  });
}
