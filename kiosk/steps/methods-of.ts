import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import { cableCapacity } from "../../shared/trade/cable-capacity.ts";
import type { ReferenceMethod } from "../../shared/trade/reference-method.ts";

/** The ways of running a cable that a house's walls and its exceptions name, in the order of the tables. */
export const methodsOf = ({
  walls,
  routeClasses,
  overrides = [],
}: AttemptView["scenario"]["plan"]): ReferenceMethod[] => {
  const named = new Set([
    ...walls.map(({ routeClass }) => routeClasses[routeClass]?.method),
    ...overrides.map(({ method }) => method),
  ]);
  return [...new Set(cableCapacity.map(({ method }) => method))].filter((method) => named.has(method));
};
