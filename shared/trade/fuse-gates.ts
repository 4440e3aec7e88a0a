import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 1362:1973",
  clause: "time/current gates",
  checked: "secondary copy",
};

/**
 * Gates of a BS 1362 cartridge fuse: at this current it may not open before `earliestS` and must have opened by
 * `latestS`. The standard gates 3 A and 13 A only; other ratings have no gate in the standard.
 */
export const fuseGates: readonly {
  ratingA: number;
  currentA: number;
  earliestS?: number;
  latestS: number;
  source: Source;
}[] = [
  { ratingA: 3, currentA: 9, earliestS: 0.02, latestS: 80, source },
  { ratingA: 3, currentA: 20, latestS: 0.1, source },
  { ratingA: 3, currentA: 30, latestS: 0.03, source },
  { ratingA: 13, currentA: 30, earliestS: 1, latestS: 400, source },
  { ratingA: 13, currentA: 50, earliestS: 0.1, latestS: 20, source },
  { ratingA: 13, currentA: 100, earliestS: 0.01, latestS: 0.2, source },
];
