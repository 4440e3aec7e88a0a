import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4F3A (single-phase)",
  checked: "from memory",
};

/** Current-carrying capacity of flexible cable. */
export const flexibleCableCapacity: readonly { csaMm2: number; capacityA: number; source: Source }[] = [
  { csaMm2: 0.5, capacityA: 3, source },
  { csaMm2: 0.75, capacityA: 6, source },
  { csaMm2: 1, capacityA: 10, source },
  { csaMm2: 1.25, capacityA: 13, source },
  { csaMm2: 1.5, capacityA: 16, source },
  { csaMm2: 2.5, capacityA: 25, source },
  { csaMm2: 4, capacityA: 32, source },
];
