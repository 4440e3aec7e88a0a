import { contactId, entryId, type RoleClass, type StationId } from "../board/ids.ts";
import type { CableModel, CircuitModel, Ring } from "../circuit/model.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";
import { coldOhm, endToEndOhm } from "./cold-resistance.ts";
import { insulationLimit } from "./meter.ts";
import type { TestSlot } from "./test-plan.ts";

/** A length of one conductor in the working: length times resistance per metre (BS EN 60228 at 20 °C). */
export interface ExpectedTerm {
  of: "L" | "N" | "E";
  csaMm2: number;
  lengthM: number;
  resistanceMilliohmPerM: number;
  resistanceOhm: number;
}

/**
 * What a reading should come to, with its working. `sum`: the terms added up. `quarter`: those of the ring added up and
 * divided by four, as in the middle of the ring, and those of the spur after it. `paths`: several ways lead there, so
 * their resistances in parallel are worked out and no sum shows it.
 */
export type ExpectedReading =
  | { by: "sum" | "quarter"; expectedOhm: number; ring: ExpectedTerm[]; spur: ExpectedTerm[] }
  | { by: "paths"; expectedOhm: number }
  | { by: "limit"; leastMegohm: number; testV: number };

type Letter = ExpectedTerm["of"];
const classOf: Record<Letter, RoleClass> = { L: "live", N: "neutral", E: "earth" };

/**
 * The reading a slot of the record should give, by length and size of what is wired, hidden faults unseen. Undefined
 * where the wiring does not say: no ring, no way to the point, a size not told.
 */
export function expectedReading(
  model: CircuitModel,
  way: StationId,
  { test, of }: TestSlot,
): ExpectedReading | undefined {
  if (test === "polarity") return undefined;
  if (test === "insulation") return { by: "limit", ...insulationLimit() };
  const ring = model.circuits.find((circuit) => circuit.way === way)?.zone.shape.rings[0];
  if (test === "ring-step-1") return endToEnd(ring, of as Letter);
  const point = of as StationId;
  if (test === "continuity-cpc") return continuity(model, way, point);
  return roundRing(model, ring, point, ["L", test === "ring-step-2" ? "N" : "E"]);
}

function endToEnd(ring: Ring | undefined, of: Letter): ExpectedReading | undefined {
  const expectedOhm = endToEndOhm(ring, classOf[of]);
  if (!ring || expectedOhm === undefined) return undefined;
  return { by: "sum", expectedOhm, ring: termsOf(ring.cables, of) ?? [], spur: [] };
}

function roundRing(
  model: CircuitModel,
  ring: Ring | undefined,
  point: StationId,
  letters: readonly [Letter, Letter],
): ExpectedReading | undefined {
  if (!ring) return undefined;
  const ends = letters.map((letter) => endToEndOhm(ring, classOf[letter]));
  const path = pathTo(model, new Set(ring.stations), point);
  const rounds = letters.map((letter) => termsOf(ring.cables, letter));
  const spurs = path && letters.map((letter) => termsOf(path, letter));
  if (!spurs || [...ends, ...rounds, ...spurs].includes(undefined)) return undefined;
  const spur = spurs.flatMap((terms) => terms ?? []);
  const expectedOhm = (ends[0]! + ends[1]!) / 4 + total(spur);
  return { by: "quarter", expectedOhm, ring: rounds.flatMap((terms) => terms ?? []), spur };
}

function continuity(model: CircuitModel, way: StationId, point: StationId): ExpectedReading | undefined {
  const front = (role: "L" | "SL" | "E") => contactId(entryId(point, "front"), role);
  const expectedOhm = coldOhm(model, front("L"), front("E")) ?? coldOhm(model, front("SL"), front("E"));
  if (expectedOhm === undefined) return undefined;
  const path = pathTo(model, new Set([way]), point);
  const terms = path && (["L", "E"] as const).map((letter) => termsOf(path, letter));
  if (terms && !terms.includes(undefined)) {
    const spur = terms.flatMap((each) => each ?? []);
    // One way leads there and nothing else: then the sum is all there is.
    if (Math.abs(total(spur) - expectedOhm) < 0.005) return { by: "sum", expectedOhm, ring: [], spur };
  }
  return { by: "paths", expectedOhm };
}

const total = (terms: readonly ExpectedTerm[]): number =>
  terms.reduce((sumOhm, { resistanceOhm }) => sumOhm + resistanceOhm, 0);

/** Cables of one size together; undefined where size or length of one is not told. */
function termsOf(cables: readonly CableModel[], of: Letter): ExpectedTerm[] | undefined {
  const bySize = new Map<number, number>();
  for (const { csaMm2, cpcCsaMm2, lengthM } of cables) {
    const sizeMm2 = of === "E" ? cpcCsaMm2 : csaMm2;
    if (sizeMm2 === undefined || lengthM === undefined || copperResistanceMilliohmPerM(sizeMm2) === undefined)
      return undefined;
    bySize.set(sizeMm2, (bySize.get(sizeMm2) ?? 0) + lengthM);
  }
  return [...bySize].map(([csaMm2, lengthM]) => {
    const resistanceMilliohmPerM = copperResistanceMilliohmPerM(csaMm2)!;
    const resistanceOhm = (resistanceMilliohmPerM * lengthM) / 1000;
    return { of, csaMm2, lengthM, resistanceMilliohmPerM, resistanceOhm };
  });
}

/** The cables of the shortest way, by their number, from any of some stations to a point; empty where it is one. */
function pathTo(
  model: CircuitModel,
  from: ReadonlySet<StationId>,
  point: StationId,
): CableModel[] | undefined {
  const before = new Map<StationId, { station: StationId; cable: CableModel } | undefined>([
    [point, undefined],
  ]);
  const queue = [point];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    if (from.has(at)) {
      const path: CableModel[] = [];
      for (let step = before.get(at); step; step = before.get(step.station)) path.push(step.cable);
      return path;
    }
    for (const cable of model.cables) {
      const { fromStation, toStation } = cable;
      const next = fromStation === at ? toStation : toStation === at ? fromStation : undefined;
      if (next === undefined || before.has(next)) continue;
      before.set(next, { station: at, cable });
      queue.push(next);
    }
  }
  return undefined;
}
