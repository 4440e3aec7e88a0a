import type { StationId } from "../board/ids.ts";
import type { CircuitModel } from "./model.ts";
import { pointDemand } from "./point-demand.ts";

export type HeaviestPoint = { point: StationId; demandA: number } | { point: StationId; lacks: string };

/**
 * Of several points the one that can draw the most, in amperes, or the first of which it is not known.
 *
 * @throws RangeError where there are none.
 */
export const heaviestPoint = (model: CircuitModel, points: readonly StationId[]): HeaviestPoint => {
  const [first, ...rest] = points.map((point): HeaviestPoint => ({ point, ...pointDemand(model, point) }));
  if (!first) throw new RangeError("without points there is no heaviest");
  return rest.reduce((worst, next) => {
    if ("lacks" in worst) return worst;
    return "lacks" in next || next.demandA > worst.demandA ? next : worst;
  }, first);
};
