import type { CircuitModel } from "../circuit/model.ts";
import type { CableFigures, Verdict } from "./verdict.ts";

/** What each cable is, may carry and relies on: mm², m and A. */
export const figuresOf = (model: CircuitModel): Verdict["figures"] => {
  const cables: Verdict["figures"]["cables"] = {};
  for (const { id, csaMm2, lengthM, ratingA, upstream } of model.cables) {
    const figures: CableFigures = {};
    if (csaMm2 !== undefined) figures.csaMm2 = csaMm2;
    if (lengthM !== undefined) figures.lengthM = lengthM;
    if (ratingA !== undefined) figures.ratingA = ratingA;
    if (upstream) figures.deviceAt = upstream.station;
    if (upstream?.ratingA !== undefined) figures.deviceA = upstream.ratingA;
    cables[id] = figures;
  }
  return { cables, points: {} };
};
