import type { CableId, EntryId, StationId } from "../board/ids.ts";
import { entryOf, stationOf } from "../board/ids.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import { acceptedZone, type HeatState, heatState } from "./accepted-zone.ts";
import { CableHeating, type RunCable, runCables } from "./cable-heating.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { litPositions } from "./lit-positions.ts";
import { ringEndsAt } from "./meter.ts";
import { type RunDevice, runDevices, type RunLoad, RunWorld } from "./run-world.ts";
import type { WiringSolution } from "./wiring-network.ts";

/** A load switched on or off at a time. */
export interface Switching {
  atS: number;
  load: string;
  isOn: boolean;
}

export interface LoadRunInput {
  wiring: Pick<Wiring, "cables" | "supply">;
  built: AsBuilt;
  loads: readonly RunLoad[];
  programme: readonly Switching[];
  durationS: number;
  /** Seconds between two points of the series. */
  stepS: number;
  /** Rating of the device or fuse each cable relies on; left out, its own rating stands for it. */
  deviceA?: ReadonlyMap<CableId, number>;
  /** Left out: as many lamps lit as there can be. */
  positions?: ReadonlyMap<StationId, 0 | 1>;
}

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
  /** Devices and fuses that nobody can time, since their standard gates them not. */
  untimed: StationId[];
}

export interface LoadRun {
  timeS: number[];
  cables: CableSeries[];
  devices: DeviceSeries[];
  rings: RingSeries[];
  facts: RunFacts;
}

const lines = [conductorTemperature.longLifeC, conductorTemperature.faultLimitC];

/**
 * Runs a programme of loads over what is built: two courses of events, every device opening as soon as it may and as
 * late as it may, and in each the temperatures of that bound. Between two events currents are constant and all is
 * exact; the series are read off every `stepS`.
 */
export function runLoads(input: LoadRunInput): LoadRun {
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
    facts: { events: [], untimed: [] },
  };
  for (let atS = 0; atS <= durationS + 1e-9; atS += stepS) run.timeS.push(atS);

  const latest = follow(input, devices, cables, "latest", ({ world, heating }) => {
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
  const earliest = follow(input, devices, cables, "earliest", ({ world, heating }) => {
    run.cables.forEach((series, index) => {
      if (cables[index]!.heat) series.lateC.push(heating.temperatureC[index]!);
    });
    run.devices.forEach((series, index) => series.mayBeOpen.push(world.isOpen[index]!));
  });
  run.facts = factsOf(run, devices, cables, earliest, latest, input.deviceA);
  return run;
}

interface Course {
  world: RunWorld;
  heating: CableHeating;
}

/** Goes from event to event along one edge of all bands, and reads off at every point of the series. */
function follow(
  { wiring, built, loads, programme, durationS, stepS, positions }: LoadRunInput,
  devices: readonly RunDevice[],
  cables: readonly RunCable[],
  edge: "earliest" | "latest",
  read: (course: Course) => void,
): Course {
  const conditions = { supply: wiring.supply ?? {}, positions: positions ?? litPositions(built) };
  const world = new RunWorld(built, devices, edge, conditions);
  const heating = new CableHeating(cables, edge === "latest" ? "early" : "late", lines);
  const switchings = [...programme].sort((a, b) => a.atS - b.atS);
  const isOn = new Set<string>();
  let nowS = 0;
  let nextSampleS = 0;
  let nextSwitching = 0;
  const solve = (): void => {
    world.switchTo(
      loads.filter(({ id }) => isOn.has(id)),
      (cable) => heating.of(cable),
    );
  };
  for (;;) {
    let isSwitched = false;
    for (; nextSwitching < switchings.length && switchings[nextSwitching]!.atS <= nowS; nextSwitching++) {
      const { load, isOn: turnsOn } = switchings[nextSwitching]!;
      if (turnsOn) isOn.add(load);
      else isOn.delete(load);
      isSwitched = true;
    }
    if (isSwitched) solve();
    // Whatever opens without delay opens before the point is read.
    while (world.nextOpeningInS() <= 0 && world.pass(0, nowS)) solve();
    if (nowS >= nextSampleS - 1e-9) {
      read({ world, heating });
      nextSampleS += stepS;
    }
    if (nextSampleS > durationS + 1e-9) return { world, heating };
    const switchingS = switchings[nextSwitching]?.atS ?? Infinity;
    const openingS = nowS + world.nextOpeningInS();
    const untilS = Math.min(nextSampleS, switchingS, openingS);
    heating.pass(world.solution, untilS - nowS, nowS);
    if (world.pass(untilS - nowS, untilS)) solve();
    nowS = untilS;
  }
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

function factsOf(
  run: LoadRun,
  devices: readonly RunDevice[],
  cables: readonly RunCable[],
  earliest: Course,
  latest: Course,
  deviceA: LoadRunInput["deviceA"],
): RunFacts {
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
  const reached = lines.flatMap((lineC) =>
    cables.flatMap(({ id }, index): RunEvent[] => {
      const earliestS = latest.heating.reachedS.get(lineC)![index]!;
      const latestS = earliest.heating.reachedS.get(lineC)![index]!;
      const kind = lineC === conductorTemperature.longLifeC ? "long-life" : "fault-limit";
      return earliestS < Infinity ? [{ kind, id, earliestS, latestS }] : [];
    }),
  );
  const events = [...openings, ...reached].sort((a, b) => a.earliestS - b.earliestS || a.latestS - b.latestS);
  const first = events.find(({ kind }) => kind === "device" || kind === "fuse" || kind === "rcd");
  const hottest = hottestOf(run, cables, earliest, latest, deviceA);
  return {
    events,
    ...(first ? { first } : {}),
    ...(hottest ? { hottest } : {}),
    untimed: devices.filter(({ hasBand }) => !hasBand).map(({ station }) => station),
  };
}

function hottestOf(
  run: LoadRun,
  cables: readonly RunCable[],
  earliest: Course,
  latest: Course,
  deviceA: LoadRunInput["deviceA"],
): RunFacts["hottest"] {
  let place = -1;
  cables.forEach(({ heat }, index) => {
    const most = latest.heating.mostC;
    if (heat && (place < 0 || most[index]! > most[place]!)) place = index;
  });
  const cable = cables[place];
  if (!cable?.heat) return undefined;
  const earlyC = latest.heating.mostC[place]!;
  const lateC = earliest.heating.mostC[place]!;
  const series = run.cables[place]!;
  const { ratingA = 0, ambientC } = cable;
  // Where the device is larger than the cable allows, nothing above the cable's own 1.45 Iz is accepted.
  const zone = acceptedZone(cable.heat, Math.min(deviceA?.get(cable.id) ?? ratingA, ratingA), ambientC);
  const aboveS = longestAboveS(series.earlyC, run.timeS, zone.fromC);
  return {
    cable: cable.id,
    earlyC,
    lateC,
    state: heatState(earlyC, Math.max(...series.currentA), aboveS, zone),
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
