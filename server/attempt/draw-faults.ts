import { createHash } from "node:crypto";
import { byId, cableId, type EntryId, type StationId, stationOf } from "../../shared/board/ids.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import {
  faultCores,
  faultCountOf,
  type HiddenFaultKind,
  hiddenFaultKinds,
  type HuntLevel,
} from "../../shared/wiring/hunt-words.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";

/**
 * What may be hidden at a level. Our own choice, easiest first: what a continuity test shows at once, what wants another
 * function of the meter or a comparison, all of them, two of them.
 */
const kindsOf: Readonly<Record<HuntLevel, readonly HiddenFaultKind[]>> = {
  1: ["open-core", "crossed-cores"],
  2: ["open-core", "crossed-cores", "low-insulation", "high-resistance"],
  3: hiddenFaultKinds,
  4: hiddenFaultKinds,
};

/** A joint this bad is seen on a meter that shows hundredths of an ohm, and is no open core. */
const poorJointsOhm = [0.6, 0.9, 1.4, 2.2];
/** All well under the 1.00 megohm of BS 7671 Table 64. */
const poorInsulationMegohm = [0.12, 0.25, 0.4, 0.7];
/** A cpc a size too small is only told by the meter in a cable of some length: 6 milliohm a metre. */
const wrongCpcFromM = 8;
const wrongCpcMm2 = 1;

const pairs = [
  ["L", "N"],
  ["L", "E"],
  ["N", "E"],
] as const;

/** Whole numbers that a seed gives, one after the other: the same for the same seed, on any machine. */
function numbersOf(seed: number): (count: number) => number {
  let drawn = 0;
  return (count) => createHash("sha256").update(`${seed} ${drawn++}`).digest().readUInt32BE() % count;
}

/**
 * The faults of a level for a circuit as it is found, each in another cable or station; the same for the same seed.
 * `cables` have their lengths; `ways` are where they begin, and hide nothing.
 */
export function drawFaults(
  level: HuntLevel,
  { cables, ways }: { cables: readonly CableSpec[]; ways: ReadonlySet<StationId> },
  seed: number,
): HiddenFault[] {
  const below = numbersOf(seed);
  const from = <Item>(items: readonly Item[]): Item => items[below(items.length)]!;
  const sorted = [...cables].sort((a, b) => byId(cableId(a.from, a.to), cableId(b.from, b.to)));
  const used = new Set<StationId>();
  return Array.from({ length: faultCountOf[level] }, () => {
    // The next fault lies elsewhere, so that no two can be taken for one another.
    const free = sorted.filter(({ from: a, to: b }) => ![a, b].some((end) => used.has(stationOf(end))));
    const among = free.length > 0 ? free : sorted;
    const fault = drawOne(from(kindsOf[level]), among, joinedStations(among, ways), from);
    for (const station of stationsAt(fault)) if (!ways.has(station)) used.add(station);
    return fault;
  });
}

const stationsAt = (fault: HiddenFault): StationId[] =>
  fault.kind === "missing-link" ? [fault.station] : (fault.cable.split("~") as EntryId[]).map(stationOf);

/** Stations at which two cables or more meet. */
function joinedStations(cables: readonly CableSpec[], ways: ReadonlySet<StationId>): StationId[] {
  const ends = cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]);
  return [...new Set(ends)]
    .filter((station) => !ways.has(station) && ends.filter((end) => end === station).length > 1)
    .sort(byId);
}

function drawOne(
  kind: HiddenFaultKind,
  cables: readonly CableSpec[],
  joined: readonly StationId[],
  from: <Item>(items: readonly Item[]) => Item,
): HiddenFault {
  const { from: one, to: two } = from(cables);
  const cable = cableId(one, two);
  switch (kind) {
    case "open-core":
      return { kind, cable, role: from(faultCores) };
    case "high-resistance":
      return { kind, cable, role: from(faultCores), resistanceOhm: from(poorJointsOhm) };
    case "crossed-cores":
      return { kind, cable, roles: [...from(pairs)] };
    case "low-insulation":
      return { kind, cable, between: [...from(pairs)], insulationMegohm: from(poorInsulationMegohm) };
    case "wrong-cpc": {
      const long = cables.filter(({ lengthM = 0 }) => lengthM >= wrongCpcFromM);
      if (long.length === 0) return { kind: "open-core", cable, role: "E" };
      const { from: a, to: b } = from(long);
      return { kind, cable: cableId(a, b), cpcCsaMm2: wrongCpcMm2 };
    }
    case "missing-link": {
      if (joined.length === 0) return { kind: "open-core", cable, role: "N" };
      return { kind, station: from(joined), role: from(faultCores) };
    }
  }
}
