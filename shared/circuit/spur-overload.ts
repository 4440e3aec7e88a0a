import { overloadFactor, worstThroughA } from "./coordination.ts";
import type { CircuitModel, Spur } from "./model.ts";
import { pointDemand } from "./point-demand.ts";

/**
 * Worst case of a spur against what its first cable may carry, both in amperes, where the worst case really is
 * more and both are known; nothing else, for the reason against a spur of several points is the arrangement.
 */
export const spurOverload = (model: CircuitModel, { first, points }: Spur): Record<string, number> => {
  const upstream = first.run.cables[0]?.upstream;
  const factor = upstream && overloadFactor(model, upstream);
  const { ratingA } = first.run;
  if (ratingA === undefined || upstream?.ratingA === undefined || factor === undefined) return {};
  let demandA = 0;
  for (const id of points) {
    const demand = pointDemand(model, id);
    if ("lacks" in demand) return {};
    demandA += demand.demandA;
  }
  const worstA = worstThroughA(demandA, upstream.ratingA, factor);
  return worstA > ratingA ? { worstA, ratingA } : {};
};
