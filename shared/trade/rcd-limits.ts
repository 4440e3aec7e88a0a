import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const additional: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "415.1",
  checked: "secondary copy",
};
const sockets: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.3.3",
  checked: "secondary copy",
};
const buried: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "522.6.202",
  checked: "secondary copy",
};
const test: Source = {
  kind: "regulation",
  document: "BS 7671:2018+A2:2022",
  clause: "643.7.1 and 643.8",
  checked: "secondary copy",
};
const product: Source = {
  kind: "standard",
  document: "BS EN 61008-1",
  clause: "general type, operating times",
  checked: "secondary copy",
};
const selective: Source = { ...product, clause: "S type", checked: "from memory" };
const breaking: Source = {
  ...product,
  clause: "rated residual making and breaking capacity",
  checked: "from memory",
};
const electrode: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.5.3",
  checked: "from memory",
};

const stable: Source = { ...electrode, clause: "411.5.3 and Table 41.5, note 2" };

/** RCDs for additional protection, and their tests. */
export const rcdLimits = sourced({
  mostRatedMa: [30, additional],
  socketOutletsToA: [32, sockets],
  /** A cable nearer the surface of a wall than this, without mechanical or earthed protection, wants an RCD. */
  buriedLessThanMm: [50, buried],
  safeZoneMm: [150, buried],
  atRatedMostMs: [300, test],
  atTwiceRatedMostMs: [150, product],
  /** No longer a test that BS 7671 asks for. */
  atFiveTimesRatedMostMs: [40, product],
  /** From this multiple of its rated residual current on an RCD is as quick as it gets. */
  fullResponseMultiple: [5, product],
  selectiveLeastMs: [130, selective],
  selectiveMostMs: [500, selective],
  selectiveAtFiveTimesMostMs: [150, selective],
  /** Every RCD breaks a residual current up to this; above it, it need not be the one that clears a fault. */
  leastBreakingA: [500, breaking],
  /** TT: RA x IdN stays within this touch voltage. */
  mostTouchV: [50, electrode],
  /** An electrode above this may not keep its resistance when the ground dries or freezes. */
  stableElectrodeMostOhm: [200, stable],
});
