import { rcdLimits } from "../trade/rcd-limits.ts";
import { rcdTimes } from "../trade/rcd-times.ts";
import type { OpeningTime } from "./opening-time.ts";

/**
 * When an RCD opens at a residual current, in seconds: it may from half its rated current on and must at its rated
 * current (BS EN 61008-1). Above 30 mA it may be of the time-delayed S type, which no setting says: the sooner and the
 * later of both count. Beyond the current that every RCD breaks it is not relied on. `rcdMa` 0 is no RCD.
 */
export function rcdOpening(rcdMa: number, residualA: number): OpeningTime {
  const multiple = rcdMa > 0 ? (residualA * 1000) / rcdMa : 0;
  if (multiple < rcdLimits.mayTripFraction) return { earliestS: Infinity, latestS: Infinity };
  const mayBeSelective = rcdMa > rcdLimits.mostRatedMa;
  const late = timesOf(mayBeSelective ? "S" : "general", multiple);
  const isSure = multiple >= 1 && residualA <= rcdLimits.leastBreakingA;
  return {
    earliestS: timesOf("general", multiple).leastMs / 1000,
    latestS: isSure ? late.mostMs / 1000 : Infinity,
  };
}

function timesOf(type: "general" | "S", multiple: number): { leastMs: number; mostMs: number } {
  const rows = rcdTimes.filter((row) => row.type === type);
  // Between half and the whole rating the times of the whole rating stand.
  return rows.findLast(({ fromMultiple }) => multiple >= fromMultiple) ?? rows[0]!;
}
