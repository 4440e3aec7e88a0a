import type { CableId, StationId } from "../board/ids.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { acceptedZone, type HeatState, heatState } from "./accepted-zone.ts";
import type { RunCable } from "./cable-heating.ts";
import type { Course } from "./run-course.ts";
import type { RunDevice } from "./run-world.ts";

/** Temperatures whose passing a run notes, in °C. */
export const runLinesC: readonly number[] = [
  conductorTemperature.longLifeC,
  conductorTemperature.faultLimitC,
];

/** Something that happens in a run, between an earliest and a latest time; Infinity where it need not happen. */
export interface RunEvent {
  kind: "device" | "fuse" | "rcd" | "long-life" | "fault-limit";
  /** Station or cable. */
  id: string;
  earliestS: number;
  latestS: number;
}

/** What the sentence under a run is made of. */
export interface RunFacts {
  /** All that may happen, soonest first by its earliest time. */
  events: RunEvent[];
  /** The protection that acts first; undefined where none need act. */
  first?: RunEvent;
  hottest?: { cable: CableId; earlyC: number; lateC: number; state: HeatState };
  /** Devices and fuses that carry more than their rating and that nobody can time: their standard has no gate for them. */
  untimed: StationId[];
}

export interface FactsInput {
  devices: readonly RunDevice[];
  cables: readonly RunCable[];
  /** The two courses of events, by which edge of their bands the devices open. */
  earliest: Course;
  latest: Course;
  /** Per cable the temperatures and currents that were read off, and when. */
  series: readonly { earlyC: readonly number[]; currentA: readonly number[] }[];
  timeS: readonly number[];
  deviceCurrentA: readonly (readonly number[])[];
  deviceA: ReadonlyMap<CableId, number> | undefined;
}

/** What a run comes to, from its two courses of events. */
export function runFacts(input: FactsInput): RunFacts {
  const { devices, cables, earliest, latest } = input;
  const openedS = ({ world }: Course, device: RunDevice): number =>
    world.openings.find((opening) => opening.device === device)?.atS ?? Infinity;
  const openings = devices.flatMap((device): RunEvent[] => {
    const by = earliest.world.openings.find((opening) => opening.device === device)?.by;
    if (!by) return [];
    const kind = by === "rcd" ? "rcd" : device.kind;
    return [
      { kind, id: device.station, earliestS: openedS(earliest, device), latestS: openedS(latest, device) },
    ];
  });
  const reached = runLinesC.flatMap((lineC) =>
    cables.flatMap(({ id }, index): RunEvent[] => {
      const earliestS = latest.heating.reachedS.get(lineC)![index]!;
      const latestS = earliest.heating.reachedS.get(lineC)![index]!;
      const kind = lineC === conductorTemperature.longLifeC ? "long-life" : "fault-limit";
      return earliestS < Infinity ? [{ kind, id, earliestS, latestS }] : [];
    }),
  );
  const events = [...openings, ...reached].sort((a, b) => a.earliestS - b.earliestS || a.latestS - b.latestS);
  const first = events.find(({ kind }) => kind === "device" || kind === "fuse" || kind === "rcd");
  const hottest = hottestOf(input);
  return {
    events,
    ...(first ? { first } : {}),
    ...(hottest ? { hottest } : {}),
    untimed: devices
      .filter(
        ({ hasBand, ratingA = 0 }, index) => !hasBand && Math.max(...input.deviceCurrentA[index]!) > ratingA,
      )
      .map(({ station }) => station),
  };
}

function hottestOf({ cables, earliest, latest, series, timeS, deviceA }: FactsInput): RunFacts["hottest"] {
  let place = -1;
  cables.forEach(({ heat }, index) => {
    const most = latest.heating.mostC;
    if (heat && (place < 0 || most[index]! > most[place]!)) place = index;
  });
  const cable = cables[place];
  if (!cable?.heat) return undefined;
  const earlyC = latest.heating.mostC[place]!;
  const lateC = earliest.heating.mostC[place]!;
  const own = series[place]!;
  const { ratingA = 0, ambientC } = cable;
  // Where the device is larger than the cable allows, nothing above the cable's own 1.45 Iz is accepted.
  const zone = acceptedZone(cable.heat, Math.min(deviceA?.get(cable.id) ?? ratingA, ratingA), ambientC);
  const aboveS = longestAboveS(own.earlyC, timeS, zone.fromC);
  return {
    cable: cable.id,
    earlyC,
    lateC,
    state: heatState(earlyC, Math.max(...own.currentA), aboveS, zone),
  };
}

/** The longest stretch of a series above a line, in seconds. */
function longestAboveS(series: readonly number[], timeS: readonly number[], lineC: number): number {
  let longestS = 0;
  let sinceS: number | undefined;
  series.forEach((valueC, index) => {
    if (valueC <= lineC) sinceS = undefined;
    else {
      sinceS ??= timeS[index]!;
      longestS = Math.max(longestS, timeS[index]! - sinceS);
    }
  });
  return longestS;
}
