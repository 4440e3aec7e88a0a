import type { ContactId, StationId } from "../board/ids.ts";
import { earthBar, neutralBar, sourceLine } from "../wiring/buses.ts";
import { defaults } from "../circuit/defaults.ts";
import { assumptions } from "../trade/assumptions.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import { simulatedLive } from "../trade/simulated-live.ts";
import { supply as mains } from "../trade/supply.ts";
import type { Supply } from "../wiring/wiring.schema.ts";
import { bandOfStation } from "./device-band.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { type MeterNetwork, meterNetwork, type MeterSetup } from "./meter-setup.ts";
import { resistanceBetweenOhm } from "./meter.ts";
import { type Network, prepareNetwork, type Resistor } from "./network.ts";
import { leastConductorOhm } from "./wiring-network.ts";

/** The circuit with its supply: as the meter's network, held at 230 V behind the impedance of the supply. */
export interface LiveNetwork extends MeterNetwork {
  held: Network["held"];
  /** The resistor that the current of the supply's line, neutral and earth runs through. */
  branches: { line: number; neutral: number; earth: number };
}

/**
 * The wiring with its devices on and the supply before them. TN-C-S: neutral and earth are one conductor up to the
 * origin, and Ze is line and that one together. TN-S: each its own half. TT: the electrode is on the way of earth.
 */
export function liveNetwork(built: AsBuilt, setup: MeterSetup, supply: Supply = {}): LiveNetwork {
  const meter = meterNetwork(built, setup);
  const { earthing = defaults.earthing, zeOhm, electrodeOhm = 0 } = supply;
  const at = (id: typeof sourceLine): number => built.nodeIndex.get(id)!;
  const [source, star] = [meter.network.nodeCount, meter.network.nodeCount + 1];
  const resistors: Resistor[] = [...meter.network.resistors];
  const branch = (a: number, b: number, ohm: number): number =>
    resistors.push({ a, b, resistanceOhm: Math.max(leastConductorOhm, ohm) }) - 1;
  const loopOhm = zeOhm ?? defaults.zeOhm[earthing];
  const half = (loopOhm > 0 ? Math.min(loopOhm, assumptions.zeOhm) : assumptions.zeOhm) / 2;
  const isTnCs = earthing === "TN-C-S";
  const line = branch(source, at(sourceLine), half);
  const neutral = branch(at(neutralBar), star, isTnCs ? loopOhm - half : half);
  const earth = isTnCs
    ? branch(at(earthBar), at(neutralBar), leastConductorOhm)
    : branch(
        at(earthBar),
        star,
        Math.max(loopOhm - half, leastConductorOhm) + (earthing === "TT" ? electrodeOhm : 0),
      );
  return {
    nodeOfProbe: (contact) => meter.nodeOfProbe(contact),
    network: { ...meter.network, nodeCount: star + 1, resistors },
    held: [
      { node: source, voltageV: mains.nominalV },
      { node: star, voltageV: 0 },
    ],
    branches: { line, neutral, earth },
  };
}

/** Volts between two places of a live circuit, by what copper and loads reach; 0 where one floats. */
export function voltageBetweenV(live: LiveNetwork, red: ContactId, black: ContactId): number {
  const [one, two] = [live.nodeOfProbe(red), live.nodeOfProbe(black)];
  if (one === undefined || two === undefined) return 0;
  const { voltageV, reached } = prepareNetwork({ ...live.network, held: live.held }).solve();
  return reached[one] && reached[two] ? Math.abs(voltageV[one]! - voltageV[two]!) : 0;
}

/**
 * Impedance in ohms of the loop through two places and the supply, cold as it is wired: Zs between line and earth of a
 * point. Infinity where the loop is open.
 */
export function loopBetweenOhm(live: LiveNetwork, red: ContactId, black: ContactId): number {
  const { held, network } = live;
  // The source has no resistance of its own: its two terminals are one for what is measured.
  const [source, star] = held.map(({ node }) => node);
  const links = [...(network.links ?? []), { a: source!, b: star! }];
  return resistanceBetweenOhm({ ...live, network: { ...network, links } }, red, black) ?? Infinity;
}

/** Fault current in amperes that the supply drives through a loop. */
export const prospectiveA = (loopOhm: number): number => mains.nominalV / loopOhm;

/** What opens the moment a way is switched on: nothing, its device by a short, or its RCD by a fault to earth. */
export type SwitchingOn = "holds" | "device-trips" | "rcd-trips";

/** What becomes of a way that is switched on, from what flows then with all that is in. */
export function switchingOn(live: LiveNetwork, built: AsBuilt, way: StationId): SwitchingOn {
  const { resistorCurrentA, heldCurrentA } = prepareNetwork({ ...live.network, held: live.held }).solve();
  const settings = built.stations.get(way)?.settings;
  const lineA = Math.abs(heldCurrentA[0]!);
  const band = bandOfStation(settings, "device");
  if (band && band.opening(lineA).latestS <= 0.1) return "device-trips";
  const rcdMa = settings?.rcdMa ?? defaults.rcdMa;
  const residualMa = Math.abs(resistorCurrentA[live.branches.earth]!) * 1000;
  return rcdMa > 0 && residualMa >= rcdMa * rcdLimits.mayTripFraction ? "rcd-trips" : "holds";
}

/** Times its rated residual current an RCD is tested at. */
export type RcdMultiple = 0.5 | 1 | 5;

/**
 * How long the RCD before a point takes at a multiple of its rated residual current, in milliseconds; undefined where
 * it does not trip: at half of it, without an RCD, or where the loop lets no such current through within 50 V.
 */
export function rcdTripMs(rcdMa: number, multiple: RcdMultiple, loopOhm: number): number | undefined {
  if (rcdMa <= 0 || multiple < 1) return undefined;
  const isReached = (loopOhm * rcdMa * multiple) / 1000 <= mains.nominalV;
  if (!isReached) return undefined;
  return multiple === 1 ? simulatedLive.rcdOneMs : simulatedLive.rcdFiveMs;
}
