import type { CableId, StationId } from "../board/ids.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { acceptedZone, type HeatState, heatState } from "./accepted-zone.ts";
import type { RunCable } from "./cable-heating.ts";
import type { Course } from "./run-course.ts";
import { runLinesC } from "./run-lines.ts";
import type { RunDevice } from "./run-world.ts";

/** Something that happens in a run, between an earliest and a latest time. */
export interface RunEvent {
  kind: "device" | "fuse" | "rcd" | "long-life" | "fault-limit" | "melted";
  /** Station or cable. */
  id: string;
  earliestS: number;
  /** Left out where it need not happen in this run. */
  latestS?: number;
}

/** What the sentence under a run is made of. */
export interface RunFacts {
  /** All that may happen, soonest first by its earliest time. */
  events: RunEvent[];
  /** The protection that acts first; undefined where none need act. */
  first?: RunEvent;
  hottest?: { cable: CableId; earlyC: number; lateC: number; state: HeatState };
  /** Devices and fuses that carry more than their rating and that nobody can time: what they are is not stated. */
  untimed: StationId[];
  /** Those that carry more than their rating and whose times are an estimate: their standard has no gate for them. */
  estimated: StationId[];
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
    return [eventOf(kind, device.station, openedS(earliest, device), openedS(latest, device))];
  });
  // Conductors are soonest hot where the devices open at the latest.
  const reached = runLinesC.flatMap((lineC) =>
    cables.flatMap(({ id }, index): RunEvent[] => {
      const earliestS = latest.heating.reachedS.get(lineC)![index]!;
      const kind = lineC === conductorTemperature.longLifeC ? "long-life" : "fault-limit";
      const latestS = earliest.heating.reachedS.get(lineC)![index]!;
      return earliestS < Infinity ? [eventOf(kind, id, earliestS, latestS)] : [];
    }),
  );
  const melted = [...latest.world.melted].map(([id, atS]) =>
    eventOf("melted", id, atS, earliest.world.melted.get(id) ?? Infinity),
  );
  const events = [...openings, ...reached, ...melted].sort(
    (a, b) => a.earliestS - b.earliestS || (a.latestS ?? Infinity) - (b.latestS ?? Infinity) || 0,
  );
  const first = events.find(({ kind }) => kind === "device" || kind === "fuse" || kind === "rcd");
  const hottest = hottestOf(input);
  const overloaded = (isMeant: (device: RunDevice) => boolean): StationId[] =>
    devices
      .filter(
        (device, index) =>
          isMeant(device) && Math.max(...input.deviceCurrentA[index]!) > (device.ratingA ?? 0),
      )
      .map(({ station }) => station);
  return {
    events,
    ...(first ? { first } : {}),
    ...(hottest ? { hottest } : {}),
    untimed: overloaded(({ hasBand }) => !hasBand),
    estimated: overloaded(({ isEstimate }) => isEstimate),
  };
}

function eventOf(kind: RunEvent["kind"], id: string, earliestS: number, latestS: number): RunEvent {
  return { kind, id, earliestS, ...(latestS < Infinity ? { latestS } : {}) };
}

function hottestOf({ cables, earliest, latest, series, timeS, deviceA }: FactsInput): RunFacts["hottest"] {
  let hottest = -1;
  cables.forEach(({ heat }, index) => {
    const most = latest.heating.mostC;
    if (heat && (hottest < 0 || most[index]! > most[hottest]!)) hottest = index;
  });
  const cable = cables[hottest];
  if (!cable?.heat) return undefined;
  const earlyC = latest.heating.mostC[hottest]!;
  const lateC = earliest.heating.mostC[hottest]!;
  const own = series[hottest]!;
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
