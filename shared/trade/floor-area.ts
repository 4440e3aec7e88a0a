import { floorAreas } from "./floor-areas.ts";

/**
 * Largest floor area in m² for a socket-outlet circuit of this shape and device (On-Site Guide Table H2.1, guidance).
 * That of a ring does not hang on its device: one that is no standard one is no reason for more. Undefined for a
 * radial on a device that is none of the standard arrangements.
 */
export function mostFloorAreaM2(
  shape: "ring" | "radial",
  deviceRatingA: number | undefined,
): number | undefined {
  const isOfDevice = ({ leastDeviceA, mostDeviceA }: (typeof floorAreas)[number]): boolean =>
    deviceRatingA !== undefined && leastDeviceA <= deviceRatingA && deviceRatingA <= mostDeviceA;
  return floorAreas.find((row) => row.shape === shape && (shape === "ring" || isOfDevice(row)))?.mostAreaM2;
}
