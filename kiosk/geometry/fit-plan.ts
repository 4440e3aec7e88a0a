import type { Point } from "./point.ts";

export interface PlanFit {
  scaleX: number;
  scaleY: number;
  originX: number;
  originY: number;
}

/** A plan may be drawn wider or higher than it is by this much, to use the screen; lengths stand in writing. */
const mostStretch = 2;

/** How a plan in grid steps is laid into an area in pixels, centred, with a margin all round. */
export const fitPlan = (
  plan: { width: number; height: number },
  area: { width: number; height: number },
  marginPx: number,
): PlanFit => {
  const roomX = Math.max(1, area.width - 2 * marginPx) / Math.max(1, plan.width);
  const roomY = Math.max(1, area.height - 2 * marginPx) / Math.max(1, plan.height);
  const least = Math.min(roomX, roomY);
  const scaleX = Math.min(roomX, least * mostStretch);
  const scaleY = Math.min(roomY, least * mostStretch);
  return {
    scaleX,
    scaleY,
    originX: (area.width - plan.width * scaleX) / 2,
    originY: (area.height - plan.height * scaleY) / 2,
  };
};

/** A place on the plan, in pixels. */
export const toPx = (fit: PlanFit, { x, y }: Point): Point => ({
  x: fit.originX + x * fit.scaleX,
  y: fit.originY + y * fit.scaleY,
});
