import { type RoleClass, roleClass, roleOf, type StationId, stationOf } from "../board/ids.ts";
import type { CircuitModel, Ring } from "../circuit/model.ts";
import { meterLimits } from "../trade/meter-limits.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";
import { ringTestLimits } from "../trade/ring-test-limits.ts";
import type { Reading } from "../wiring/wiring.schema.ts";
import { cablePath, termsOf, totalOhm } from "./cable-path.ts";
import { cableGaps } from "./circuit-gaps.ts";
import { coldOhm, endToEndOhm } from "./cold-resistance.ts";
import { insulationLimit } from "./meter.ts";
import { zoneTreeOf } from "./zone-tree.ts";

/**
 * `unclear`: the record does not hold enough to say. `implausible`: not what cable of that length can read, so it says
 * nothing about the circuit but that the right places have to be probed again; never a pass, and right to be failed.
 */
export type RightJudgement = "pass" | "fail" | "unclear" | "implausible";

/**
 * Whether a reading on record passes, by the limits of its test: over range fails every resistance test; line and
 * neutral of a ring end to end agree within 0.05 ohm and the protective conductor stands to them as its size does (IET
 * Guidance Note 3); steps 2 and 3 give what the ends predict; insulation is at least 1.00 megohm (BS 7671 Table 64);
 * a protective conductor reads no more than its cable, its leads and a tolerance come to. A resistance far below what
 * the lengths give, or ends far above it, is implausible whatever it agrees with. `readings` are all on record.
 */
export function judgeReading(
  model: CircuitModel,
  reading: Reading,
  readings: readonly Reading[],
): RightJudgement {
  const { test, insulationMegohm, isOverRange, isPolarityRight } = reading;
  if (test === "polarity")
    return isPolarityRight === undefined ? "unclear" : isPolarityRight ? "pass" : "fail";
  if (test === "insulation") {
    if (isOverRange) return "pass";
    if (insulationMegohm === undefined) return "unclear";
    return insulationMegohm >= insulationLimit().leastMegohm ? "pass" : "fail";
  }
  if (isOverRange) return "fail";
  if (reading.resistanceOhm === undefined) return "unclear";
  if (test === "continuity-cpc") return judgeContinuity(model, reading, reading.resistanceOhm);
  const ring = model.circuits.find(({ way }) => way === reading.way)?.zone.shape.rings[0];
  const ends = ringEnds(readings, reading.way, ring);
  if (test === "ring-step-1") return judgeStep1(ring, reading, reading.resistanceOhm, ends);
  return judgeAround(model, ring, reading, reading.resistanceOhm, ends);
}

/** Plausible end-to-end readings on record for a way, the last of each conductor. */
function ringEnds(
  readings: readonly Reading[],
  way: StationId,
  ring: Ring | undefined,
): Partial<Record<RoleClass, number>> {
  const ends: Partial<Record<RoleClass, number>> = {};
  for (const { test, way: of, red, resistanceOhm } of readings) {
    if (test !== "ring-step-1" || of !== way || !red || resistanceOhm === undefined) continue;
    const conductor = roleClass(roleOf(red));
    if (isEndPlausible(ring, conductor, resistanceOhm)) ends[conductor] = resistanceOhm;
    else delete ends[conductor];
  }
  return ends;
}

const isFarBelow = (readOhm: number, expectedOhm: number): boolean =>
  readOhm < ringTestLimits.leastPlausibleFraction * expectedOhm - ringTestLimits.r1RnToleranceOhm;

/** A poor joint shows in one conductor; ends of twice what the cable has are not the ends of this ring. */
function isEndPlausible(ring: Ring | undefined, of: RoleClass, readOhm: number): boolean {
  const expectedOhm = endToEndOhm(ring, of);
  if (expectedOhm === undefined) return true;
  const mostOhm = expectedOhm / ringTestLimits.leastPlausibleFraction;
  return !isFarBelow(readOhm, expectedOhm) && readOhm <= mostOhm + tolerance + meterLimits.testLeadsOhm;
}

const tolerance = ringTestLimits.r1RnToleranceOhm + meterLimits.resolutionOhm / 2;
const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= tolerance;

function judgeStep1(
  ring: Ring | undefined,
  { red }: Reading,
  resistanceOhm: number,
  ends: Partial<Record<RoleClass, number>>,
): RightJudgement {
  const of = red && roleClass(roleOf(red));
  if (of === undefined) return "unclear";
  if (!isEndPlausible(ring, of, resistanceOhm)) return "implausible";
  const line = ends.live ?? ends.neutral;
  if (of === "earth") {
    const ratio = cpcRatio(ring);
    if (line === undefined || ratio === undefined) return "unclear";
    return isNear(resistanceOhm, ratio * line) || isRatioOfHandbook(resistanceOhm / line, ratio)
      ? "pass"
      : "fail";
  }
  const other = of === "live" ? ends.neutral : ends.live;
  if (other === undefined) return "unclear";
  return isNear(resistanceOhm, other) ? "pass" : "fail";
}

/** The handbook's 1.67 and what the maxima of the standard give bound what is accepted for 2.5/1.5 mm². */
function isRatioOfHandbook(read: number, expected: number): boolean {
  const { leastR2R1Ratio, mostR2R1Ratio } = ringTestLimits;
  const isUsual = expected >= leastR2R1Ratio && expected <= mostR2R1Ratio;
  return isUsual && read >= leastR2R1Ratio && read <= mostR2R1Ratio;
}

/** r2 over r1 of a ring of one kind of cable, by BS EN 60228. */
function cpcRatio(ring: Ring | undefined): number | undefined {
  const ratios = new Set(
    ring?.cables.map(({ csaMm2, cpcCsaMm2 }) => {
      const [line, cpc] = [csaMm2, cpcCsaMm2].map((size) => size && copperResistanceMilliohmPerM(size));
      return line && cpc ? cpc / line : undefined;
    }),
  );
  return ratios.size === 1 ? [...ratios][0] : undefined;
}

/** Steps 2 and 3, from the ends on record: between the value at the way and that in the middle; a spur reads more. */
function judgeAround(
  model: CircuitModel,
  ring: Ring | undefined,
  { test, red }: Reading,
  resistanceOhm: number,
  ends: Partial<Record<RoleClass, number>>,
): RightJudgement {
  const r1 = ends.live;
  const r2 = test === "ring-step-2" ? ends.neutral : ends.earth;
  if (r1 === undefined || r2 === undefined || !red) return "unclear";
  const leastOhm = (r1 * r2) / (r1 + r2);
  const mostOhm = (r1 + r2) / 4;
  if (isFarBelow(resistanceOhm, leastOhm)) return "implausible";
  if (resistanceOhm < leastOhm - tolerance) return "fail";
  if (resistanceOhm <= mostOhm + tolerance) return "pass";
  // More than the ring alone gives: right on a spur, by what its cable adds, and wrong on the ring.
  if (!ring || ring.stations.includes(stationOf(red))) return "fail";
  const path = cablePath(model, new Set(ring.stations), stationOf(red));
  const terms = (["L", test === "ring-step-2" ? "N" : "E"] as const).map(
    (letter) => path && termsOf(path, letter),
  );
  if (terms.includes(undefined)) return "unclear";
  const spurOhm = totalOhm(terms.flatMap((each) => each ?? []));
  return resistanceOhm <= mostOhm + spurOhm + tolerance + meterLimits.testLeadsOhm ? "pass" : "fail";
}

/** Against what cable and leads come to by the sizes and lengths that are stated; a poor joint reads more. */
function judgeContinuity(
  model: CircuitModel,
  { red, black, way }: Reading,
  resistanceOhm: number,
): RightJudgement {
  const circuit = zoneTreeOf(model).circuits.find(({ zones }) =>
    zones.some((zone) => zone.ways.includes(way)),
  );
  if (!red || !black || !circuit || cableGaps(circuit.zones).length > 0) return "unclear";
  const expectedOhm = coldOhm(model, red, black);
  if (expectedOhm === undefined) return "unclear";
  if (isFarBelow(resistanceOhm, expectedOhm)) return "implausible";
  return resistanceOhm <= expectedOhm + tolerance + meterLimits.testLeadsOhm ? "pass" : "fail";
}
