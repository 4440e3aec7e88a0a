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
const product: Source = {
  kind: "standard",
  document: "BS EN 61008-1",
  clause: "rated residual non-operating current",
  checked: "secondary copy",
};
const breaking: Source = {
  ...product,
  clause: "rated residual making and breaking capacity",
  checked: "from memory",
};
/** As the On-Site Guide is quoted at https://diynot.com/diy/threads/measuring-earth-electrode-resistance.108875 */
const electrode: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.5.3",
  checked: "secondary copy",
};

/** As quoted at https://www.voltimum.co.uk/news/q-day-tt-domestic-earthing-system-87 */
const stable: Source = { ...electrode, clause: "411.5.3 and Table 41.5, note 2" };

/** RCDs for additional protection; how fast they are stands in a table of its own. */
export const rcdLimits = sourced({
  mostRatedMa: [30, additional],
  socketOutletsToA: [32, sockets],
  /** A cable nearer the surface of a wall than this, without mechanical or earthed protection, wants an RCD. */
  buriedLessThanMm: [50, buried],
  safeZoneMm: [150, buried],
  /** It may trip from this part of its rated residual current on. */
  mayTripFraction: [0.5, product],
  /** Every RCD breaks a residual current up to this; above it, it need not be the one that clears a fault. */
  leastBreakingA: [500, breaking],
  /** TT: RA x IdN stays within this touch voltage. */
  mostTouchV: [50, electrode],
  /** An electrode above this may not keep its resistance when the ground dries or freezes. */
  stableElectrodeMostOhm: [200, stable],
});
