import type { FaceStation } from "../../shared/protocol/bench-view.ts";

const widthsMm: Record<FaceStation["kind"], number> = {
  way: 16,
  "socket-outlet": 12,
  "junction-box": 12,
  fcu: 14,
  "ceiling-rose": 12,
  "plate-switch": 12,
  luminaire: 12,
  isolator: 12,
  "cooker-control": 12,
  appliance: 12,
};
const twinWidthMm = 15;
const heightMm = 11.5;

/** How large a station's plate is drawn on the plan, in millimetres; never under the 10 mm a finger needs. */
export const plateSizeMm = (
  station: Pick<FaceStation, "kind" | "gangs">,
): { widthMm: number; heightMm: number } => ({
  widthMm: station.kind === "socket-outlet" && station.gangs === 2 ? twinWidthMm : widthsMm[station.kind],
  heightMm,
});

/** Kinds that are told apart by their name on the plan; the others by their symbol and number. */
export const isNamed = (kind: FaceStation["kind"]): boolean =>
  kind === "way" ||
  kind === "fcu" ||
  kind === "isolator" ||
  kind === "cooker-control" ||
  kind === "appliance";
