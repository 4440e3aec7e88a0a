import { contactId, entryId, type RoleClass, type StationId } from "../board/ids.ts";
import type { CircuitModel, Ring } from "../circuit/model.ts";
import { cablePath, type ExpectedTerm, termsOf, totalOhm } from "./cable-path.ts";
import { coldOhm, endToEndOhm } from "./cold-resistance.ts";
import { insulationLimit } from "./meter.ts";
import type { TestSlot } from "./test-plan.ts";

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
  const path = cablePath(model, new Set(ring.stations), point);
  const rounds = letters.map((letter) => termsOf(ring.cables, letter));
  const spurs = path && letters.map((letter) => termsOf(path, letter));
  if (!spurs || [...ends, ...rounds, ...spurs].includes(undefined)) return undefined;
  const spur = spurs.flatMap((terms) => terms ?? []);
  const expectedOhm = (ends[0]! + ends[1]!) / 4 + totalOhm(spur);
  return { by: "quarter", expectedOhm, ring: rounds.flatMap((terms) => terms ?? []), spur };
}

function continuity(model: CircuitModel, way: StationId, point: StationId): ExpectedReading | undefined {
  const front = (role: "L" | "SL" | "E") => contactId(entryId(point, "front"), role);
  const expectedOhm = coldOhm(model, front("L"), front("E")) ?? coldOhm(model, front("SL"), front("E"));
  if (expectedOhm === undefined) return undefined;
  const path = cablePath(model, new Set([way]), point);
  const terms = path && (["L", "E"] as const).map((letter) => termsOf(path, letter));
  if (terms && !terms.includes(undefined)) {
    const spur = terms.flatMap((each) => each ?? []);
    // One way leads there and nothing else: then the sum is all there is.
    if (Math.abs(totalOhm(spur) - expectedOhm) < 0.005) return { by: "sum", expectedOhm, ring: [], spur };
  }
  return { by: "paths", expectedOhm };
}
