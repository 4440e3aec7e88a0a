import { entryId, stationId } from "../../../shared/board/ids.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";
import type { StationKind } from "../../../shared/board/station-kinds.ts";
import type { CableSpec, Load, Station, Wiring } from "../../../shared/wiring/wiring.schema.ts";

/** A circuit of its own: its way, what hangs on it, and what draws current there. */
export interface Circuit {
  stations: Station[];
  cables: CableSpec[];
  loads: Load[];
}

export const asWiring = (...circuits: Circuit[]): Wiring => ({
  version: 1,
  stations: circuits.flatMap(({ stations }) => stations),
  cables: circuits.flatMap(({ cables }) => cables),
  loads: circuits.flatMap(({ loads }) => loads),
});

/** Puts a circuit together; ids begin with `mark`, so that circuits of different marks share nothing. */
class Builder {
  readonly circuit: Circuit = { stations: [], cables: [], loads: [] };
  readonly #letters = new Map<string, number>();

  constructor(
    readonly mark: string,
    readonly random: () => number,
  ) {}

  pick<T>(values: readonly T[]): T {
    return values[Math.floor(this.random() * values.length)]!;
  }

  add(kind: StationKind, word: string, settings: StationSettings): string {
    const id = `${this.mark}${word}`;
    this.circuit.stations.push({ id: stationId(id), kind, settings });
    return id;
  }

  way(deviceRatingA: number): string {
    const deviceStandard = this.pick(["BS EN 60898", "BS EN 61009"] as const);
    return this.add("way", "way", { deviceStandard, deviceCurve: "B", deviceRatingA, rcdMa: 30 });
  }

  /** The next free entry of the usual feed letters of a station. */
  free(station: string): string {
    const used = this.#letters.get(station) ?? 0;
    this.#letters.set(station, used + 1);
    return `${station}.${"abcd"[used]!}`;
  }

  cable(from: string, to: string, csaMm2: number, lengthM = 2 + Math.round(60 * this.random()) / 10): void {
    const end = (text: string): CableSpec["from"] => {
      const [station = "", letter = ""] = text.split(".");
      return entryId(station, letter);
    };
    this.circuit.cables.push({ from: end(from), to: end(to), csaMm2, lengthM });
  }

  outlet(index: number): string {
    return this.add("socket-outlet", `socket-${index}`, { gangs: this.pick([1, 2] as const) });
  }
}

/** One spur a point at most, each by the book: to one outlet, or through a fused unit. */
function spurs(build: Builder, points: readonly string[]): void {
  points.forEach((point, index) => {
    const what = build.random();
    if (what > 0.5) return;
    if (what < 0.25) return build.cable(build.free(point), `${build.outlet(100 + index)}.a`, 2.5);
    const isBoiler = what < 0.35;
    const fcu = build.add("fcu", `fcu-${index}`, { fuseRatingA: isBoiler ? 3 : 13, switched: true });
    build.cable(build.free(point), `${fcu}.a`, 2.5);
    if (isBoiler) {
      const boiler = build.add("appliance", `boiler-${index}`, { appliance: "boiler" });
      build.cable(`${fcu}.c`, `${boiler}.a`, 1.5, 2);
      build.circuit.loads.push({ station: stationId(boiler), powerW: 100 });
    } else build.cable(`${fcu}.c`, `${build.outlet(200 + index)}.a`, 2.5);
  });
}

function ring(build: Builder): void {
  const way = build.way(32);
  const points = Array.from({ length: 2 + Math.floor(5 * build.random()) }, (_, index) =>
    build.outlet(index),
  );
  let before = way;
  for (const point of points) {
    build.cable(build.free(before), build.free(point), 2.5);
    before = point;
  }
  build.cable(build.free(before), build.free(way), 2.5);
  spurs(build, points);
}

function radial(build: Builder, ratingA: number, csaMm2: number): void {
  const way = build.way(ratingA);
  const points: string[] = [];
  for (let index = 0; index < 1 + Math.floor(4 * build.random()); index++) {
    const point = build.outlet(index);
    // A chain or a tree: from the last point, or from any with an entry left.
    const from = build.random() < 0.6 ? (points.at(-1) ?? way) : build.pick([way, ...points].slice(-2));
    build.cable(build.free(from), build.free(point), csaMm2);
    points.push(point);
  }
}

function lighting(build: Builder): void {
  let before = `${build.way(6)}.a`;
  for (let index = 0; index < 1 + Math.floor(4 * build.random()); index++) {
    const rose = build.add("ceiling-rose", `rose-${index}`, {});
    const plate = build.add("plate-switch", `switch-${index}`, {});
    build.cable(before, `${rose}.a`, build.pick([1, 1.5]));
    build.cable(`${rose}.s`, `${plate}.s`, 1);
    build.circuit.loads.push({ station: stationId(rose), powerW: build.pick([10, 60]) });
    before = `${rose}.b`;
  }
}

function cooker(build: Builder): void {
  const control = build.add("cooker-control", "control", {
    ratingA: 45,
    hasSocketOutlet: build.random() < 0.5,
    distanceToApplianceM: 1,
  });
  const appliance = build.add("appliance", "cooker", { appliance: "cooker" });
  build.cable(`${build.way(32)}.a`, `${control}.a`, 6);
  build.cable(`${control}.c`, `${appliance}.a`, 6, 1.5);
  build.circuit.loads.push({ station: stationId(appliance), powerW: build.pick([5000, 9000]) });
}

function waterHeater(build: Builder): void {
  const isolator = build.add("isolator", "isolator", { ratingA: 20 });
  const heater = build.add("appliance", "heater", { appliance: "water-heater", litres: 120 });
  build.cable(`${build.way(16)}.a`, `${isolator}.a`, 2.5);
  build.cable(`${isolator}.c`, `${heater}.a`, 2.5, 1);
  build.circuit.loads.push({ station: stationId(heater), powerW: 3000, isLongRunning: true });
}

const kinds = {
  ring,
  "radial-20": (build: Builder) => radial(build, 20, 2.5),
  "radial-32": (build: Builder) => radial(build, 32, 4),
  lighting,
  cooker,
  "water-heater": waterHeater,
};
export type CircuitKind = keyof typeof kinds;
export const circuitKinds = Object.keys(kinds) as CircuitKind[];

/** A circuit by the book, of one of the kinds a house has; its lengths keep the drop within limits by far. */
export function randomCircuit(
  random: () => number,
  mark: string,
  among: readonly CircuitKind[] = circuitKinds,
): Circuit {
  const build = new Builder(mark, random);
  kinds[build.pick(among)](build);
  return build.circuit;
}
