import { type ContactId, type StationId, stationOf } from "../board/ids.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import type { MeterSetup } from "./meter-setup.ts";
import { type MeterProbes, type ProbePoint, readInsulation, readOhm } from "./meter.ts";

/** Why a reading says nothing: the board cannot tell a contact, or nobody has said the size of a cable. */
export type UnclearCause = "board" | "size";

/**
 * What the display of the meter shows on a dead circuit. `open`: a probe touches nothing. `over-range`: more than it
 * can show. `unclear`: what is wired is not known well enough to say. Every one is simulated.
 */
export type ShownReading =
  | { shows: "open" }
  | { shows: "over-range" }
  | { shows: "unclear"; because: UnclearCause }
  | { shows: "ohm"; resistanceOhm: number }
  | { shows: "megohm"; insulationMegohm: number };

const isInAir = (place: ProbePoint): place is null => place === null;

/** What the low-resistance ohmmeter shows; see `readOhm`. */
export function showOhm(
  wiring: Pick<Wiring, "unknown">,
  built: AsBuilt,
  setup: MeterSetup,
  probes: MeterProbes,
): ShownReading {
  const { red, black } = probes;
  if (red === "other-probe" || black === "other-probe") return ohmOf(built, setup, probes);
  if (isInAir(red) || isInAir(black)) return { shows: "open" };
  const because = unclearFor(wiring, built, [red, black], { areSizesNeeded: true });
  return because ? { shows: "unclear", because } : ohmOf(built, setup, probes);
}

function ohmOf(built: AsBuilt, setup: MeterSetup, probes: MeterProbes): ShownReading {
  const reading = readOhm(built, setup, probes);
  return reading.isOverRange
    ? { shows: "over-range" }
    : { shows: "ohm", resistanceOhm: reading.resistanceOhm };
}

/** What the insulation tester shows while its key is pressed; see `readInsulation`. */
export function showInsulation(
  wiring: Pick<Wiring, "unknown">,
  built: AsBuilt,
  setup: MeterSetup,
  { red, black }: Pick<MeterProbes, "red" | "black">,
): ShownReading {
  const areTogether = red === "other-probe" || black === "other-probe";
  if (!areTogether && (isInAir(red) || isInAir(black))) return { shows: "open" };
  if (!areTogether) {
    const because = unclearFor(wiring, built, [red as ContactId, black as ContactId], {
      areSizesNeeded: false,
    });
    if (because) return { shows: "unclear", because };
  }
  const reading = readInsulation(built, setup, { red, black });
  return reading.isOverRange
    ? { shows: "over-range" }
    : { shows: "megohm", insulationMegohm: reading.insulationMegohm };
}

/**
 * Why nothing can be said between two contacts: among the stations that copper joins to them, the board cannot tell a
 * contact; or, where resistance is asked for, a cable has no size that is in the tables or no length. A bad line of the
 * board is never read as a broken core.
 */
export function unclearFor(
  { unknown = [] }: Pick<Wiring, "unknown">,
  built: AsBuilt,
  places: readonly ContactId[],
  { areSizesNeeded }: { areSizesNeeded: boolean },
): UnclearCause | undefined {
  const together = stationsTogether(built);
  const near = new Set(places.map((place) => together(stationOf(place))));
  const isNear = (contact: ContactId): boolean => near.has(together(stationOf(contact)));
  if (unknown.some(isNear)) return "board";
  if (!areSizesNeeded) return undefined;
  const isUnsized = built.conductors.some(
    ({ from, to, csaMm2, lengthM }) =>
      stationOf(from) !== stationOf(to) &&
      (isNear(from) || isNear(to)) &&
      (lengthM === undefined || csaMm2 === undefined || copperResistanceMilliohmPerM(csaMm2) === undefined),
  );
  return isUnsized ? "size" : undefined;
}

/** Stations that any core joins, by one of them. */
function stationsTogether({ stations, conductors }: AsBuilt): (station: StationId) => number {
  const indexOf = new Map([...stations.keys()].map((id, index) => [id, index]));
  const sets = new DisjointSets(indexOf.size);
  for (const { from, to } of conductors) {
    const [one, two] = [indexOf.get(stationOf(from)), indexOf.get(stationOf(to))];
    if (one !== undefined && two !== undefined) sets.join(one, two);
  }
  return (station) => {
    const index = indexOf.get(station);
    return index === undefined ? -1 : sets.find(index);
  };
}
