import type { Source } from "./source.ts";

// To 1.25 mm² also in diynot.com/pages/el/el003.php and pat-testing-training.net/articles/fuse-ratings.php, which
// give 15 A for 1.5 mm².
const seen: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4F3A (single-phase)",
  checked: "secondary copy",
};
const memory: Source = { ...seen, checked: "from memory" };

/** Current-carrying capacity of flexible cable. */
export const flexibleCableCapacity: readonly { csaMm2: number; capacityA: number; source: Source }[] = [
  { csaMm2: 0.5, capacityA: 3, source: seen },
  { csaMm2: 0.75, capacityA: 6, source: seen },
  { csaMm2: 1, capacityA: 10, source: seen },
  { csaMm2: 1.25, capacityA: 13, source: seen },
  { csaMm2: 1.5, capacityA: 16, source: memory },
  { csaMm2: 2.5, capacityA: 25, source: memory },
  { csaMm2: 4, capacityA: 32, source: memory },
];
