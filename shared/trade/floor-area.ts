import { floorAreas } from "./floor-areas.ts";

/**
 * Largest floor area in m² for a standard socket-outlet circuit of this shape and device (On-Site Guide Table H2.1,
 * guidance). Undefined for a device that is none of the standard arrangements.
 */
export function mostFloorAreaM2(shape: "ring" | "radial", deviceRatingA: number): number | undefined {
  const fits = (row: (typeof floorAreas)[number]) =>
    row.shape === shape && row.leastDeviceA <= deviceRatingA && deviceRatingA <= row.mostDeviceA;
  return floorAreas.find(fits)?.mostAreaM2;
}
