import type { BreakerCurve } from "./breaker-curves.ts";
import type { DisconnectingDevice } from "./maximum-zs.ts";

/**
 * The device as the fault loop tables know it: a circuit-breaker or RCBO by its curve, a fuse by its standard.
 * Undefined for a circuit-breaker whose curve is not said.
 */
export function disconnectingDevice(
  standard: "BS EN 60898" | "BS EN 61009" | "BS 88-3" | "BS 3036" | "BS 1362",
  curve?: BreakerCurve,
): DisconnectingDevice | undefined {
  return standard === "BS EN 60898" || standard === "BS EN 61009" ? curve : standard;
}
