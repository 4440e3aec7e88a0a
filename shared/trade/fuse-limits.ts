import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const cartridge: Source = {
  kind: "standard",
  document: "BS 1362:1973",
  clause: "conventional fusing current",
  checked: "secondary copy",
};
/** As quoted at https://kilcullenscience.blogspot.com/2025/02/13-fuses-dont-blow-instantly-when.html */
const holding: Source = { ...cartridge, clause: "conventional non-fusing current" };
const spur: Source = {
  kind: "guidance",
  document: "BS 7671:2018",
  clause: "Appendix 15; On-Site Guide Appendix H",
  checked: "secondary copy",
};
const unit: Source = {
  kind: "standard",
  document: "BS 1363-4",
  clause: "rating of a fused connection unit",
  checked: "secondary copy",
};
const practice: Source = { kind: "common practice, no source" };

/** What the fuse of a connection unit does and may be. */
export const fuseLimits = sourced({
  holdsMultiple: [1.6, holding],
  opensMultiple: [1.9, cartridge],
  /** The time within which it opens at the one and holds at the other. */
  conventionalS: [1800, cartridge],
  mostRatingA: [13, spur],
  boilerControlsA: [3, practice],
  lightingA: [3, practice],
  mostLightingA: [5, practice],
  /** 3 x 230 V and 13 x 230 V: the loads a 3 A and a 13 A fuse are for. */
  threeAmpLoadW: [690, unit],
  thirteenAmpLoadW: [2990, unit],
  /** An appliance sold as 3 kW counts as 13 A behind a connection unit. */
  fullLoadApplianceW: [3000, practice],
  fullLoadCountsAsA: [13, practice],
});
