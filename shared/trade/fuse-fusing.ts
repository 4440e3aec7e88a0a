import type { FuseStandard } from "./fuse-zs.ts";
import type { Source } from "./source.ts";

const household: Source = {
  kind: "standard",
  document: "BS 88-3",
  clause: "conventional fusing current; tolerance of the time/current zone (IEC 60269-1)",
  checked: "from memory",
};
/** 1.45 / 0.725 of BS 7671 433.1.202; how far single wires scatter is an estimate. */
const rewireable: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.202, fusing at twice the rating",
  checked: "recomputed",
};

/**
 * What the tables of loop impedance do not say of a fuse: from which multiple of its rating on it opens at all, by
 * when, and at which part of the late current it may already open.
 */
export const fuseFusing: readonly {
  fuse: Exclude<FuseStandard, "BS 1362">;
  fusesMultiple: number;
  conventionalS: number;
  earlyFraction: number;
  source: Source;
}[] = [
  { fuse: "BS 88-3", fusesMultiple: 1.6, conventionalS: 3600, earlyFraction: 0.8, source: household },
  { fuse: "BS 3036", fusesMultiple: 2, conventionalS: 3600, earlyFraction: 0.6, source: rewireable },
];
