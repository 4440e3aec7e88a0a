import { disconnectionLimits } from "./disconnection-limits.ts";

/**
 * Longest disconnection time in seconds of a 230 V final circuit (BS 7671:2018 411.3.2.2 to 411.3.2.4, Table 41.1):
 * 0.4 s (TT 0.2 s) to 63 A with socket outlets and to 32 A with fixed loads only, beyond that 5 s (TT 1 s).
 */
export function disconnectionTimeS(isTt: boolean, deviceRatingA: number, hasSocketOutlets: boolean): number {
  const { socketOutletsToA, fixedToA, tnFinalS, ttFinalS, tnOtherS, ttOtherS } = disconnectionLimits;
  const isShort = deviceRatingA <= (hasSocketOutlets ? socketOutletsToA : fixedToA);
  if (isShort) return isTt ? ttFinalS : tnFinalS;
  return isTt ? ttOtherS : tnOtherS;
}
