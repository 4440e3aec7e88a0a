import type { StationId } from "../board/ids.ts";
import type { CableModel, CircuitModel } from "../circuit/model.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";

/** A length of one conductor in the working: length times resistance per metre (BS EN 60228 at 20 °C). */
export interface ExpectedTerm {
  of: "L" | "N" | "E";
  csaMm2: number;
  lengthM: number;
  resistanceMilliohmPerM: number;
  resistanceOhm: number;
}

/** The terms added up, in ohms. */
export const totalOhm = (terms: readonly ExpectedTerm[]): number =>
  terms.reduce((sumOhm, { resistanceOhm }) => sumOhm + resistanceOhm, 0);

/** Cables of one size together; undefined where size or length of one is not told. */
export function termsOf(cables: readonly CableModel[], of: ExpectedTerm["of"]): ExpectedTerm[] | undefined {
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
export function cablePath(
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
