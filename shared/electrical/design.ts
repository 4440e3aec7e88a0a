import { cableCapacity } from "../trade/cable-capacity.ts";
import { tabulatedCapacityA } from "../trade/capacity.ts";
import { cookerDemandA } from "../trade/cooker-demand.ts";
import { ambientFactor, groupingFactor, insulationFactor } from "../trade/correction-factors.ts";
import { nextDeviceRatingA } from "../trade/device-rating.ts";
import { disconnectionTimeS } from "../trade/disconnection-time.ts";
import { leastSizes } from "../trade/least-sizes.ts";
import type { DisconnectingDevice } from "../trade/maximum-zs.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import type { ReferenceMethod } from "../trade/reference-method.ts";
import { copperResistanceMilliohmPerM, usualCpcCsaMm2 } from "../trade/resistance.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { supply } from "../trade/supply.ts";
import { voltageDropMvPerAM } from "../trade/voltage-drop.ts";
import { adiabaticCurrentA, faultEnergy, leastCsaMm2 } from "./adiabatic.ts";
import { loopLimit, isTouchVoltageSafe } from "./fault-loop.ts";

export interface DesignInput {
  shape: "ring" | "radial";
  use: "lighting" | "power";
  /** Loads of the circuit; all at once, but for the cooking allowance. */
  loads: readonly { powerW: number; isCooking?: boolean }[];
  hasSocketOutletInCookerControl?: boolean;
  /** The device where it is given, as it is for a ring. */
  deviceRatingA?: number;
  device: DisconnectingDevice;
  /** The whole way round for a ring, to the furthest point for a radial. */
  lengthM: number;
  method: ReferenceMethod;
  ambientC: number;
  groupedCircuits: number;
  insulationMm: number;
  zeOhm: number;
  isTt: boolean;
  electrodeOhm?: number;
  rcdMa: number;
  hasSocketOutlets: boolean;
  letThroughA2s?: number;
}

/** In the order in which they are looked at. */
export const constraints = ["capacity", "volt-drop", "fault-loop", "cpc-size", "least-size"] as const;
export type Constraint = (typeof constraints)[number];

/** One standard size, held to everything. */
export interface SizeRow {
  csaMm2: number;
  tabulatedA: number;
  dropV: number;
  zsOhm: number;
  zsLimitOhm: number | undefined;
  cpcCsaMm2: number;
  /** Undefined where the energy of a fault cannot be told; then it decides nothing. */
  leastCpcCsaMm2: number | undefined;
  fails: Constraint[];
}

export interface DesignSheet {
  /** Ib. */
  designA: number;
  /** In. */
  deviceA: number;
  factors: { ca: number; cg: number; ci: number; cf: number };
  /** It: what the table must give at least. */
  tabulatedNeededA: number;
  dropLimitV: number;
  rows: SizeRow[];
  /** The smallest size that fails nothing; undefined where none does. */
  csaMm2?: number;
  /** What the next smaller size fails by, first of `constraints`; `least-size` where there is no smaller one. */
  decidedBy?: Constraint;
}

/** Ib in amperes: all loads at 230 V, cooking by its allowance (On-Site Guide Table A2). */
export function designCurrentA({ loads, hasSocketOutletInCookerControl = false }: DesignInput): number {
  const sumA = (isCooking: boolean): number =>
    loads
      .filter((load) => (load.isCooking ?? false) === isCooking)
      .reduce((sumW, { powerW }) => sumW + powerW, 0) / supply.nominalV;
  const cookingA = sumA(true);
  return sumA(false) + (cookingA > 0 ? cookerDemandA(cookingA, hasSocketOutletInCookerControl) : 0);
}

/**
 * The design worksheet of one final circuit of flat twin-and-earth: Ib, In >= Ib, It >= In / (Ca Cg Ci Cf) (a ring 20 A
 * in place of In, no Ci on top of methods A and 100 to 103), then every standard size held to its tabulated current,
 * the tabulated voltage drop (a ring: 26 A at a quarter of its length, On-Site Guide Appendix H), Zs at 70 °C, the
 * adiabatic check and the least size (BS 7671 Appendix 4, 525, 411.4.4, 543.1.3, Table 52.3). Undefined where the load
 * is above the largest standard device or a factor is outside its table.
 */
export function designSheet(input: DesignInput): DesignSheet | undefined {
  const designA = designCurrentA(input);
  const deviceA = input.deviceRatingA ?? nextDeviceRatingA(designA);
  const ca = ambientFactor(input.ambientC);
  const cg = groupingFactor(input.groupedCircuits);
  const ci = input.method === "C" ? insulationFactor(input.insulationMm) : 1;
  if (deviceA === undefined || ca === undefined || cg === undefined || ci === undefined) return undefined;
  // 433.1.204 names BS 3036 among the devices of a ring, whose cable needs 20 A by itself and no factor on top.
  const isDerated = input.device === "BS 3036" && input.shape !== "ring";
  const cf = isDerated ? overloadLimits.semiEnclosedFactor : 1;
  const protectedA = input.shape === "ring" ? ringLimits.leastCapacityA : deviceA;
  const tabulatedNeededA = protectedA / (ca * cg * ci * cf);
  const fraction = input.use === "lighting" ? supply.lightingDropFraction : supply.otherDropFraction;
  const dropLimitV = fraction * supply.nominalV;
  const sizes = [...new Set(cableCapacity.map(({ csaMm2 }) => csaMm2))].sort((a, b) => a - b);
  const rows = sizes.flatMap((csaMm2) => {
    const row = sizeRow(input, csaMm2, { designA, deviceA, tabulatedNeededA, dropLimitV });
    return row ? [row] : [];
  });
  const index = rows.findIndex(({ fails }) => fails.length === 0);
  const chosen = rows[index];
  return {
    designA,
    deviceA,
    factors: { ca, cg, ci, cf },
    tabulatedNeededA,
    dropLimitV,
    rows,
    ...(chosen ? { csaMm2: chosen.csaMm2, decidedBy: rows[index - 1]?.fails[0] ?? "least-size" } : {}),
  };
}

function sizeRow(
  input: DesignInput,
  csaMm2: number,
  sheet: Pick<DesignSheet, "designA" | "deviceA" | "tabulatedNeededA" | "dropLimitV">,
): SizeRow | undefined {
  const tabulatedA = tabulatedCapacityA(csaMm2, input.method);
  const cpcCsaMm2 = usualCpcCsaMm2(csaMm2);
  const dropMv = voltageDropMvPerAM(csaMm2);
  const hotC = conductorTemperature.longLifeC;
  const r1 = copperResistanceMilliohmPerM(csaMm2, hotC);
  const r2 = cpcCsaMm2 === undefined ? undefined : copperResistanceMilliohmPerM(cpcCsaMm2, hotC);
  if (tabulatedA === undefined || cpcCsaMm2 === undefined || dropMv === undefined) return undefined;
  if (r1 === undefined || r2 === undefined) return undefined;
  const isRing = input.shape === "ring";
  // Half the length by each leg, side by side: a quarter of what the whole length would have.
  const effectiveM = isRing ? input.lengthM / 4 : input.lengthM;
  const currentA = isRing ? ringLimits.designEffectiveA : sheet.designA;
  const dropV = (dropMv * effectiveM * currentA) / 1000;
  const r2Ohm = (r2 * effectiveM) / 1000;
  const zsOhm = input.zeOhm + (input.isTt ? (input.electrodeOhm ?? 0) : 0) + (r1 * effectiveM) / 1000 + r2Ohm;
  const loop = loopLimit(zsOhm, {
    device: input.device,
    ratingA: sheet.deviceA,
    disconnectionS: disconnectionTimeS(input.isTt, sheet.deviceA, input.hasSocketOutlets),
  });
  const isByRcd = input.isTt && isTouchVoltageSafe((input.electrodeOhm ?? Infinity) + r2Ohm, input.rcdMa);
  const energyA2s = faultEnergy({
    device: input.device,
    ratingA: sheet.deviceA,
    letThroughA2s: input.letThroughA2s,
    rcdMa: input.rcdMa,
  })(adiabaticCurrentA(zsOhm));
  const leastCpcCsaMm2 = energyA2s === undefined ? undefined : leastCsaMm2(energyA2s);
  const leastMm2 = input.use === "lighting" ? leastSizes.lightingCsaMm2 : leastSizes.powerCsaMm2;
  const failing: Record<Constraint, boolean> = {
    capacity: tabulatedA < sheet.tabulatedNeededA,
    "volt-drop": dropV > sheet.dropLimitV,
    "fault-loop": !loop.isInTime && !isByRcd,
    "cpc-size": leastCpcCsaMm2 !== undefined && cpcCsaMm2 < leastCpcCsaMm2,
    "least-size": csaMm2 < (isRing ? ringLimits.leastCsaMm2 : leastMm2),
  };
  return {
    csaMm2,
    tabulatedA,
    dropV,
    zsOhm,
    zsLimitOhm: loop.limitOhm,
    cpcCsaMm2,
    leastCpcCsaMm2,
    fails: constraints.filter((constraint) => failing[constraint]),
  };
}

/** Cold R1 + R2 in ohms that the worksheet predicts for the test, from its size and length at 20 °C. */
export function predictedR1PlusR2Ohm(row: SizeRow, input: Pick<DesignInput, "shape" | "lengthM">): number {
  const effectiveM = input.shape === "ring" ? input.lengthM / 4 : input.lengthM;
  const milliohmPerM = [row.csaMm2, row.cpcCsaMm2].map((size) => copperResistanceMilliohmPerM(size) ?? 0);
  return (milliohmPerM.reduce((sum, each) => sum + each, 0) * effectiveM) / 1000;
}
