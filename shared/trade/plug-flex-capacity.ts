import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 1363-1",
  clause: "Table 2",
  checked: "secondary copy",
};

/** Flexible cord as fitted to plugs: size and current. */
export const plugFlexCapacity: readonly { csaMm2: number; capacityA: number; source: Source }[] = [
  { csaMm2: 0.5, capacityA: 3, source },
  { csaMm2: 0.75, capacityA: 6, source },
  { csaMm2: 1, capacityA: 10, source },
  { csaMm2: 1.25, capacityA: 13, source },
  { csaMm2: 1.5, capacityA: 15, source },
  { csaMm2: 2.5, capacityA: 20, source },
];
