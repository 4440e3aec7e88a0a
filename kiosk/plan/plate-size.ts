import type { FaceStation } from "../../shared/protocol/bench-view.ts";

const widthsMm: Record<FaceStation["kind"], number> = {
  way: 17,
  "socket-outlet": 12,
  "junction-box": 12,
  fcu: 14,
  "ceiling-rose": 12,
  "plate-switch": 12,
  luminaire: 12,
  isolator: 13,
  "cooker-control": 15,
  appliance: 19,
};
const twinWidthMm = 17;
const heightMm = 11.5;

/** How large a station's plate is drawn on the plan, in millimetres; never under the 10 mm a finger needs. */
export const plateSizeMm = (
  station: Pick<FaceStation, "kind" | "gangs">,
): { widthMm: number; heightMm: number } => ({
  widthMm: station.kind === "socket-outlet" && station.gangs === 2 ? twinWidthMm : widthsMm[station.kind],
  heightMm,
});
