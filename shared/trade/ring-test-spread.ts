import type { Source } from "./source.ts";

const source: Source = {
  kind: "guidance",
  document: "IET Guidance Note 3",
  clause: "ring final circuit continuity, step 3",
  checked: "secondary copy",
};

/** Step 3 of the ring test: how far the reading at the ends lies below the one at the middle of the ring. */
export const ringTestSpread: readonly {
  csaMm2: number;
  cpcCsaMm2: number;
  spreadFraction: number;
  source: Source;
}[] = [
  { csaMm2: 2.5, cpcCsaMm2: 1.5, spreadFraction: 0.06, source },
  { csaMm2: 2.5, cpcCsaMm2: 1.0, spreadFraction: 0.18, source },
  { csaMm2: 4, cpcCsaMm2: 1.5, spreadFraction: 0.2, source },
];
