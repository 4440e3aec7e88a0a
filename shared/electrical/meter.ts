import type { ContactId, EntryId, StationId } from "../board/ids.ts";
import { entryId, entryOf, stationOf } from "../board/ids.ts";
import { entriesOf } from "../wiring/buses.ts";
import { insulationTests } from "../trade/insulation-tests.ts";
import { meterLimits } from "../trade/meter-limits.ts";
import type { Copper } from "./copper.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { meterNetwork, type MeterNetwork, type MeterSetup } from "./meter-setup.ts";
import { prepareNetwork } from "./network.ts";

/** Where a probe is: on a contact or a test face, held against the other probe, or in the air. */
export type ProbePoint = ContactId | "other-probe" | null;

export interface MeterProbes {
  red: ProbePoint;
  black: ProbePoint;
  /** Resistance of a long lead put in for the R2 test, which goes on top of the two test leads. */
  longLeadOhm?: number;
  /** What the meter was nulled to; 0 where nobody nulled it. */
  nulledOhm: number;
}

/** A reading as the display shows it. Every one is simulated. */
export type OhmReading = { resistanceOhm: number; isOverRange: false } | { isOverRange: true };
export type InsulationReading = { insulationMegohm: number; isOverRange: false } | { isOverRange: true };

/**
 * Resistance in ohms between the probes, unrounded and without the test leads. Infinity where no copper joins them,
 * undefined where a probe touches nothing.
 */
export function resistanceBetweenOhm(
  meter: MeterNetwork,
  red: ProbePoint,
  black: ProbePoint,
): number | undefined {
  if (red === "other-probe" || black === "other-probe") return 0;
  if (red === null || black === null) return undefined;
  const from = meter.nodeOfProbe(black);
  const to = meter.nodeOfProbe(red);
  if (from === undefined || to === undefined) return undefined;
  if (from === to) return 0;
  const prepared = prepareNetwork({ ...meter.network, held: [{ node: from, voltageV: 0 }] });
  const { voltageV, reached } = prepared.solve([{ from, to, currentA: 1 }]);
  return reached[to] ? voltageV[to]! : Infinity;
}

/** What nulling sets: the leads with their tips together, or undefined where they are not together. */
export function nullOhm({ red, black, longLeadOhm = 0 }: Omit<MeterProbes, "nulledOhm">): number | undefined {
  const areTogether = red === "other-probe" || black === "other-probe";
  return areTogether ? meterLimits.testLeadsOhm + longLeadOhm : undefined;
}

/**
 * Low-resistance ohmmeter: what is between the probes and the leads themselves, less what was nulled, in steps of
 * 0.01 ohm. Open, or more than the display holds, is over range. No noise: the same circuit reads the same.
 */
export function readOhm(built: AsBuilt, setup: MeterSetup, leads: MeterProbes): OhmReading {
  const betweenOhm = resistanceBetweenOhm(meterNetwork(built, setup), leads.red, leads.black);
  if (betweenOhm === undefined) return { isOverRange: true };
  const { testLeadsOhm, resolutionOhm, mostOhm } = meterLimits;
  const shownOhm = betweenOhm + testLeadsOhm + (leads.longLeadOhm ?? 0) - leads.nulledOhm;
  if (shownOhm > mostOhm) return { isOverRange: true };
  return { resistanceOhm: onDisplay(shownOhm, resolutionOhm), isOverRange: false };
}

/**
 * Insulation tester at the test voltage of a circuit to 500 V: leakage of every cable and of every fault in parallel,
 * in steps of 0.01 megohm. Lamps and electronics left in, or neutral linked to earth, read low as they would.
 */
export function readInsulation(
  built: AsBuilt,
  setup: MeterSetup,
  { red, black }: Pick<MeterProbes, "red" | "black">,
): InsulationReading {
  const betweenOhm = resistanceBetweenOhm(meterNetwork(built, setup), red, black);
  const megohm = (betweenOhm ?? Infinity) / 1e6;
  if (megohm > meterLimits.mostInsulationMegohm) return { isOverRange: true };
  return { insulationMegohm: onDisplay(megohm, 0.01), isOverRange: false };
}

/** The test voltage and the least reading that passes, for a final circuit (BS 7671 Table 64). */
export function insulationLimit(): { testV: number; leastMegohm: number } {
  const row = insulationTests.find((each) => each.circuit === "to 500 V")!;
  return { testV: row.testV, leastMegohm: row.leastMegohm };
}

/**
 * Polarity by working the switch during the R1 + R2 test: the reading comes with the switch on and goes with it off.
 * One that stays says that line does not pass the switch; one that never comes says nothing.
 */
export function polarityBySwitch(on: OhmReading, off: OhmReading): "right" | "wrong" | "not-shown" {
  if (on.isOverRange) return "not-shown";
  return off.isOverRange ? "right" : "wrong";
}

/**
 * The two ends of a ring at a way: the first two entries there whose cables meet again without the way. Undefined
 * where none do.
 */
export function ringEndsAt(copper: Copper, way: StationId): [EntryId, EntryId] | undefined {
  const station = copper.stations.get(way);
  if (!station) return undefined;
  const isAtWay = (contact: ContactId): boolean => stationOf(contact) === way;
  const stations = new Map<string, string>();
  const root = (id: string): string => {
    let at = id;
    while (stations.has(at) && stations.get(at) !== at) at = stations.get(at)!;
    return at;
  };
  const farEnd = new Map<EntryId, StationId>();
  for (const { from, to } of copper.conductors) {
    if (isAtWay(from) && !isAtWay(to)) farEnd.set(entryOf(from), stationOf(to));
    else if (isAtWay(to) && !isAtWay(from)) farEnd.set(entryOf(to), stationOf(from));
    else stations.set(root(stationOf(from)), root(stationOf(to)));
  }
  const entries = entriesOf(station)
    .map(({ letter }) => entryId(way, letter))
    .filter((entry) => farEnd.has(entry));
  for (const one of entries) {
    const two = entries.find((each) => each !== one && root(farEnd.get(each)!) === root(farEnd.get(one)!));
    if (two) return [one, two];
  }
  return undefined;
}

function onDisplay(value: number, step: number): number {
  // Twelve digits first: 0.285 / 0.01 is a hair below 28.5 in binary. Steps a unit are whole, so no digits are added.
  const perUnit = Math.round(1 / step);
  return Math.round(Number((value * perUnit).toPrecision(12))) / perUnit;
}
