import { cableLoads } from "../electrical/cable-loads.ts";
import { earthLoopsOf } from "../electrical/earth-loops.ts";
import { neededRatingsA } from "../circuit/needed-ratings.ts";
import { voltageDropsOf } from "../electrical/voltage-drops.ts";
import type { CircuitModel } from "../circuit/model.ts";
import type { CableFigures, PointFigures, Verdict } from "./verdict.ts";

/** What each cable is, may carry, relies on and is asked for, and what each point gets: mm², m, A, V and ohm. */
export const figuresOf = (model: CircuitModel): Verdict["figures"] => {
  const loads = cableLoads(model);
  const needed = neededRatingsA(model);
  const cables: Verdict["figures"]["cables"] = {};
  for (const { id, csaMm2, lengthM, ratingA, upstream } of model.cables) {
    const figures: CableFigures = (cables[id] = {});
    const designA = loads.get(id);
    if (csaMm2 !== undefined) figures.csaMm2 = csaMm2;
    if (lengthM !== undefined) figures.lengthM = lengthM;
    if (ratingA !== undefined) figures.ratingA = ratingA;
    if (upstream) figures.deviceAt = upstream.station;
    if (upstream?.ratingA !== undefined) figures.deviceA = upstream.ratingA;
    const neededA = needed.get(id);
    if (neededA !== undefined) figures.neededA = neededA;
    if (designA !== undefined) figures.designA = designA;
    if (designA !== undefined && ratingA !== undefined) figures.share = designA / ratingA;
  }
  const points: Verdict["figures"]["points"] = {};
  const at = (id: keyof typeof points): PointFigures => (points[id] ??= {});
  for (const { station, dropV, limitV } of voltageDropsOf(model).points.values()) {
    Object.assign(at(station), { dropV, dropLimitV: limitV });
  }
  for (const { loops } of earthLoopsOf(model).circuits) {
    for (const { station, zsOhm, limitOhm } of loops) {
      Object.assign(at(station), { zsOhm, ...(limitOhm === undefined ? {} : { zsLimitOhm: limitOhm }) });
    }
  }
  return { cables, points };
};
