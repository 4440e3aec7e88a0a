import { fuseLimits } from "./fuse-limits.ts";
import { supply } from "./supply.ts";

/** What an appliance behind a plug or fuse counts as, in amperes at 230 V: one sold as 3 kW is the 13 A of its fuse. */
export const plugLoadA = (powerW: number): number => {
  const currentA = powerW / supply.nominalV;
  return powerW <= fuseLimits.fullLoadApplianceW
    ? Math.min(currentA, fuseLimits.fullLoadCountsAsA)
    : currentA;
};
