import type { CableRunView } from "../../shared/protocol/bench-view.ts";
import type { PlannedRoute } from "../../shared/scenario/plan-route.ts";

/** How a cable on a route is rated, and where its worst piece lies. A route that names no method is clipped direct. */
export const cableRun = ({ method = "C", insulationMm, worstPiece }: PlannedRoute): CableRunView => ({
  method,
  ...(insulationMm === undefined ? {} : { insulationMm }),
  ...(worstPiece ? { worstPath: worstPiece.pathPoints.map(({ x, y }) => ({ x, y })) } : {}),
});
