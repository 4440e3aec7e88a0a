import type { Source } from "./source.ts";

const rating = (document: string): Source => ({
  kind: "standard",
  document,
  clause: "rating usual on the accessory",
  checked: "from memory",
});

/** Accessories with a usual rating. */
export type Accessory =
  | "single socket outlet"
  | "twin socket outlet"
  | "fused connection unit"
  | "plate switch, lighting"
  | "double-pole switch, water heater"
  | "cooker control unit"
  | "isolator, shower"
  | "junction box, socket circuits"
  | "junction box, lighting";

/**
 * Ratings usual on accessories. A twin socket outlet is rated 20 A in total by convention of its product standard,
 * though two plugs could take 26 A.
 */
export const accessoryRatings: readonly { accessory: Accessory; ratingA: number; source: Source }[] = [
  { accessory: "single socket outlet", ratingA: 13, source: rating("BS 1363-2") },
  { accessory: "twin socket outlet", ratingA: 20, source: rating("BS 1363-2") },
  { accessory: "fused connection unit", ratingA: 13, source: rating("BS 1363-4") },
  { accessory: "plate switch, lighting", ratingA: 10, source: rating("BS EN 60669") },
  { accessory: "double-pole switch, water heater", ratingA: 20, source: rating("BS EN 60669") },
  { accessory: "cooker control unit", ratingA: 45, source: rating("BS EN 60669") },
  { accessory: "isolator, shower", ratingA: 50, source: rating("BS EN 60669") },
  { accessory: "junction box, socket circuits", ratingA: 32, source: rating("BS EN 60670-22") },
  { accessory: "junction box, lighting", ratingA: 20, source: rating("BS EN 60670-22") },
];
