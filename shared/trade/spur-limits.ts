import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const regulation: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.204",
  checked: "secondary copy",
};
const guide: Source = {
  kind: "guidance",
  document: "BS 7671:2018",
  clause: "Appendix 15; On-Site Guide 7.2.2 and Appendix H",
  checked: "secondary copy",
};
const memory: Source = { ...guide, checked: "from memory" };
const practice: Source = { kind: "common practice, no source" };

/** What a spur may feed and where it may leave. */
export const spurLimits = sourced({
  /** One single or one twin socket outlet, or one fixed item. */
  pointsPerUnfusedSpur: [1, guide],
  leastCsaMm2: [2.5, regulation],
  leastCapacityA: [20, regulation],
  /** From this device up a spur must be of `leastCsaMm2`. */
  fullSizeFromDeviceA: [30, guide],
  /** A 4 mm² 32 A radial may have a 2.5 mm² unfused spur to one point. */
  largeRadialCsaMm2: [4, memory],
  largeRadialSpurCsaMm2: [2.5, memory],
  /** Guidance drawings show one at a point; more is not taught. */
  unfusedSpursPerPlace: [1, practice],
  unfusedSpursPerRingPoint: [1, guide],
  mostFuseA: [13, guide],
  fixedItemMostFuseA: [13, guide],
  fixedItemMostBreakerA: [16, guide],
  /** Rule of thumb: spur length to the cable from the spur to the furthest point of the ring. */
  lengthHintFraction: [0.125, guide],
});
