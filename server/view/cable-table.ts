import type { CableTableView } from "../../shared/protocol/bench-view.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import { cableCapacity } from "../../shared/trade/cable-capacity.ts";
import { tabulatedCapacityA } from "../../shared/trade/capacity.ts";

/**
 * What the cables of a task may carry by BS 7671:2018 Table 4D5, in amperes, for the ways of running them that the
 * walls of its house and the exceptions name; ways in the order of the table, sizes from the smallest.
 */
export const cableTable = ({ plan, parts }: Pick<StrippedScenario, "plan" | "parts">): CableTableView => {
  const { walls, routeClasses, overrides = [] } = plan;
  const named = new Set([
    ...walls.map(({ routeClass }) => routeClasses[routeClass]?.method),
    ...overrides.map(({ method }) => method),
  ]);
  const methods = [...new Set(cableCapacity.map(({ method }) => method))].filter((method) =>
    named.has(method),
  );
  const sizesMm2 = [...parts.cableCsaMm2].sort((a, b) => a - b);
  return {
    methods,
    rows: sizesMm2.map((csaMm2) => ({
      csaMm2,
      capacityA: methods.map((method) => tabulatedCapacityA(csaMm2, method) ?? null),
    })),
  };
};
