import type { PlanZone } from "../../shared/protocol/bench-view.ts";
import type { Plan } from "../../shared/scenario/scenario.schema.ts";
import type { ReferenceMethod, Route } from "../../shared/wiring/wiring.schema.ts";

/** Methods of BS 7671 Table 4D5 in which the cable lies in thermal insulation or against it. */
const insulated: readonly ReferenceMethod[] = ["A", "100", "101", "102", "103"];

const kindsOf = ({ method = "C", insulationMm = 0, inMetalFramedWall }: Route): PlanZone["kind"][] => [
  ...(insulated.includes(method) || insulationMm > 0 ? (["insulation"] as const) : []),
  ...(inMetalFramedWall ? (["metal-frame"] as const) : []),
];

/** The runs of a plan in which a cable carries less or needs more protection, a zone for each way of running. */
export const planZones = ({ walls, routeClasses }: Pick<Plan, "walls" | "routeClasses">): PlanZone[] =>
  Object.entries(routeClasses).flatMap(([name, route]) => {
    const pieces = walls
      .filter(({ routeClass }) => routeClass === name)
      .map(({ from, to }) => ({ from: { ...from }, to: { ...to } }));
    if (pieces.length === 0) return [];
    return kindsOf(route).map((kind) => ({ kind, method: route.method ?? "C", pieces }));
  });
