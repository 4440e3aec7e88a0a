import { toPx } from "../../../kiosk/geometry/fit-plan.ts";
import type { PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import { stationOf } from "../../../shared/board/ids.ts";
import type { AttemptView } from "../../../shared/protocol/bench-view.ts";

/** Half of a wall as it is drawn. */
const halfWallMm = 0.5;

/**
 * What is wrong with the shape of the drawn cables: a jog, which is a part between two bends that is shorter than two
 * widths of the sheath; a bend right at a plate; and one that lies on the walls round the house or outside them,
 * unless it leads to a station out there.
 */
export const shapeComplaints = (
  { cables, ground: { fit } }: PlanDrawing,
  { scenario: { plan } }: AttemptView,
  mmPx: number,
): string[] => {
  const walls = plan.walls.filter(({ as = "wall" }) => as === "wall").flatMap(({ from, to }) => [from, to]);
  const [xs, ys] = [walls.map(({ x }) => x), walls.map(({ y }) => y)];
  const least = toPx(fit, { x: Math.min(...xs), y: Math.min(...ys) });
  const most = toPx(fit, { x: Math.max(...xs), y: Math.max(...ys) });
  const outdoors = plan.places.filter(({ at }) => {
    const { x, y } = toPx(fit, at);
    return x < least.x || x > most.x || y < least.y || y > most.y;
  });
  return cables.flatMap(({ cable: { id, from, to }, line, widthPx }) => {
    const complaints: string[] = [];
    for (const [i, b] of line.entries()) {
      const a = line[i - 1];
      if (!a || line.length === 2) continue;
      const farPx = Math.hypot(b.x - a.x, b.y - a.y);
      const isAtPlate = i === 1 || i === line.length - 1;
      // Two hundredths of a width are seen by nobody.
      if (farPx < (isAtPlate ? 0.58 : 1.96) * widthPx)
        complaints.push(`${id} ${isAtPlate ? "bends" : "jogs"} after ${(farPx / mmPx).toFixed(1)} mm`);
    }
    const keepPx = widthPx / 2 + halfWallMm * mmPx;
    const isOut = ({ x, y }: { x: number; y: number }) =>
      x < least.x + keepPx || x > most.x - keepPx || y < least.y + keepPx || y > most.y - keepPx;
    const leadsOut = outdoors.some(({ station }) => [from, to].map(stationOf).includes(station));
    if (!leadsOut && line.some(isOut)) complaints.push(`${id} lies on the wall round the house`);
    return complaints;
  });
};
