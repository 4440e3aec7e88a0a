import type { CableId, EntryId, StationId } from "../board/ids.ts";
import { entryOf, stationOf } from "../board/ids.ts";
import { type RunCable, runCables } from "./cable-heating.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import type { LoadRunInput } from "./load-run-input.ts";
import { ringEndsAt } from "./meter.ts";
import { followCourse } from "./run-course.ts";
import { type RunFacts, runFacts } from "./run-facts.ts";
import { assertRunLimits } from "./run-limits.ts";
import { runDevices } from "./run-world.ts";
import type { WiringSolution } from "./wiring-network.ts";

export interface CableSeries {
  cable: CableId;
  ratingA: number | undefined;
  /** Largest current of any loaded core, devices opening as late as they may. */
  currentA: number[];
  /** Soonest hot: least heat to fill, devices at the latest. Empty where its size or way of running is not known. */
  earlyC: number[];
  /** Latest hot: most heat to fill, devices at the earliest. */
  lateC: number[];
}

export interface DeviceSeries {
  station: StationId;
  kind: "device" | "fuse";
  ratingA: number | undefined;
  hasBand: boolean;
  currentA: number[];
  /** Per point of the series: whether it may already be open, and whether it must be. */
  mayBeOpen: boolean[];
  mustBeOpen: boolean[];
}

export interface RingSeries {
  way: StationId;
  ends: [EntryId, EntryId];
  /** Current into each end, and the first end's share of both, 0 where there is none. */
  legA: [number[], number[]];
  firstShare: number[];
}

export interface LoadRun {
  timeS: number[];
  cables: CableSeries[];
  devices: DeviceSeries[];
  rings: RingSeries[];
  facts: RunFacts;
}

/**
 * Runs a programme of loads over what is built: two courses of events, every device opening as soon as it may and as
 * late as it may, and in each the temperatures of that bound. Between two events currents are constant and all is
 * exact; the series are read off every `stepS`. A conductor that reaches the melting point of copper parts there, so
 * every run ends and no temperature is beyond it. Throws `RunLimitsError`.
 */
export function runLoads(input: LoadRunInput): LoadRun {
  assertRunLimits(input);
  const { wiring, built, durationS, stepS } = input;
  const devices = runDevices(built);
  const cables = runCables(built, wiring.cables);
  const rings = ringsOf(built);
  const run: LoadRun = {
    timeS: [],
    cables: cables.map(({ id, ratingA }) => ({ cable: id, ratingA, currentA: [], earlyC: [], lateC: [] })),
    devices: devices.map(({ station, kind, ratingA, hasBand }) => ({
      ...{ station, kind, ratingA, hasBand, currentA: [] },
      mayBeOpen: [],
      mustBeOpen: [],
    })),
    rings: rings.map(({ way, ends }) => ({ way, ends, legA: [[], []], firstShare: [] })),
    facts: { events: [], untimed: [], estimated: [] },
  };
  for (let atS = 0; atS <= durationS + 1e-9; atS += stepS) run.timeS.push(atS);

  const latest = followCourse(input, devices, cables, "latest", ({ world, heating }) => {
    run.cables.forEach((series, index) => {
      series.currentA.push(mostCurrentA(cables[index]!, world.solution));
      if (cables[index]!.heat) series.earlyC.push(heating.temperatureC[index]!);
    });
    run.devices.forEach((series, index) => {
      series.currentA.push(world.currentA(devices[index]!));
      series.mustBeOpen.push(world.isOpen[index]!);
    });
    run.rings.forEach((series, index) => {
      const [one, two] = rings[index]!.legsOf(world.solution);
      series.legA[0].push(one);
      series.legA[1].push(two);
      series.firstShare.push(one + two > 0 ? one / (one + two) : 0);
    });
  });
  const earliest = followCourse(input, devices, cables, "earliest", ({ world, heating }) => {
    run.cables.forEach((series, index) => {
      if (cables[index]!.heat) series.lateC.push(heating.temperatureC[index]!);
    });
    run.devices.forEach((series, index) => series.mayBeOpen.push(world.isOpen[index]!));
  });
  run.facts = runFacts({
    devices,
    cables,
    earliest,
    latest,
    series: run.cables,
    timeS: run.timeS,
    deviceCurrentA: run.devices.map(({ currentA }) => currentA),
    deviceA: input.deviceA,
  });
  return run;
}

function mostCurrentA({ cores }: RunCable, { conductorA }: WiringSolution): number {
  let most = 0;
  for (const index of cores) most = Math.max(most, Math.abs(conductorA[index]!));
  return most;
}

/** The rings of what is built, and how much flows into each of their two ends. */
function ringsOf(built: AsBuilt): {
  way: StationId;
  ends: [EntryId, EntryId];
  legsOf: (solution: WiringSolution) => [number, number];
}[] {
  return [...built.stations.values()].flatMap(({ id: way, kind }) => {
    const ends = kind === "way" ? ringEndsAt(built, way) : undefined;
    if (!ends) return [];
    const lineAt = (end: EntryId): number =>
      built.conductors.findIndex(
        ({ core, from, to }) =>
          core === "brown" &&
          ((stationOf(from) === way && entryOf(from) === end) ||
            (stationOf(to) === way && entryOf(to) === end)),
      );
    const [one, two] = [lineAt(ends[0]), lineAt(ends[1])];
    const currentA = ({ conductorA }: WiringSolution, index: number): number =>
      index < 0 ? 0 : Math.abs(conductorA[index]!);
    return [{ way, ends, legsOf: (solution) => [currentA(solution, one), currentA(solution, two)] }];
  });
}
