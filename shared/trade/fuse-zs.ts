import type { Source } from "./source.ts";

/** Fuses whose limits are tabulated: plug-top and connection-unit cartridges, household cartridges, rewireable. */
export type FuseStandard = "BS 1362" | "BS 88-3" | "BS 3036";

const seen: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "Tables 41.2 (0.4 s) and 41.4 (5 s)",
  checked: "secondary copy",
};
const memory: Source = { ...seen, checked: "from memory" };
/**
 * From the fuse tables of a test instrument's manual, which print 0.8 of the values before Cmin: x 0.95 / 0.8
 * (https://www.easymanua.ls/metrel/easiplus-mi-3000/manual?p=57). Neither standard has a row at 45 A for 0.4 s.
 */
const recomputed: Source = { ...seen, checked: "recomputed" };

/**
 * Maximum earth fault loop impedance for fuses at U0 230 V, Cmin 0.95, conductor hot. `operatingCurrentA` is the
 * current that opens the fuse in the time; for 5 s it was not tabulated and follows from 0.95 x 230 V / Zs.
 */
export const fuseZs: readonly {
  fuse: FuseStandard;
  ratingA: number;
  disconnectionS: 0.4 | 5;
  maximumZsOhm: number;
  operatingCurrentA?: number;
  source: Source;
}[] = [
  {
    fuse: "BS 1362",
    ratingA: 3,
    disconnectionS: 0.4,
    maximumZsOhm: 15.6,
    operatingCurrentA: 14,
    source: recomputed,
  },
  { fuse: "BS 1362", ratingA: 3, disconnectionS: 5, maximumZsOhm: 22.0, source: recomputed },
  {
    fuse: "BS 1362",
    ratingA: 13,
    disconnectionS: 0.4,
    maximumZsOhm: 2.3,
    operatingCurrentA: 95,
    source: recomputed,
  },
  { fuse: "BS 1362", ratingA: 13, disconnectionS: 5, maximumZsOhm: 3.64, source: recomputed },
  {
    fuse: "BS 88-3",
    ratingA: 5,
    disconnectionS: 0.4,
    maximumZsOhm: 9.93,
    operatingCurrentA: 22,
    source: recomputed,
  },
  { fuse: "BS 88-3", ratingA: 5, disconnectionS: 5, maximumZsOhm: 14.6, source: recomputed },
  {
    fuse: "BS 88-3",
    ratingA: 16,
    disconnectionS: 0.4,
    maximumZsOhm: 2.3,
    operatingCurrentA: 95,
    source: recomputed,
  },
  { fuse: "BS 88-3", ratingA: 16, disconnectionS: 5, maximumZsOhm: 3.91, source: recomputed },
  {
    fuse: "BS 88-3",
    ratingA: 20,
    disconnectionS: 0.4,
    maximumZsOhm: 1.93,
    operatingCurrentA: 113,
    source: recomputed,
  },
  { fuse: "BS 88-3", ratingA: 20, disconnectionS: 5, maximumZsOhm: 3.19, source: memory },
  {
    fuse: "BS 88-3",
    ratingA: 32,
    disconnectionS: 0.4,
    maximumZsOhm: 0.91,
    operatingCurrentA: 240,
    source: recomputed,
  },
  { fuse: "BS 88-3", ratingA: 32, disconnectionS: 5, maximumZsOhm: 1.57, source: memory },
  { fuse: "BS 88-3", ratingA: 45, disconnectionS: 5, maximumZsOhm: 0.99, source: recomputed },
  {
    fuse: "BS 3036",
    ratingA: 5,
    disconnectionS: 0.4,
    maximumZsOhm: 9.1,
    operatingCurrentA: 24,
    source: seen,
  },
  { fuse: "BS 3036", ratingA: 5, disconnectionS: 5, maximumZsOhm: 16.8, source: seen },
  {
    fuse: "BS 3036",
    ratingA: 15,
    disconnectionS: 0.4,
    maximumZsOhm: 2.43,
    operatingCurrentA: 90,
    source: recomputed,
  },
  { fuse: "BS 3036", ratingA: 15, disconnectionS: 5, maximumZsOhm: 5.08, source: recomputed },
  {
    fuse: "BS 3036",
    ratingA: 20,
    disconnectionS: 0.4,
    maximumZsOhm: 1.68,
    operatingCurrentA: 130,
    source: recomputed,
  },
  { fuse: "BS 3036", ratingA: 20, disconnectionS: 5, maximumZsOhm: 3.64, source: recomputed },
  {
    fuse: "BS 3036",
    ratingA: 30,
    disconnectionS: 0.4,
    maximumZsOhm: 1.04,
    operatingCurrentA: 210,
    source: recomputed,
  },
  { fuse: "BS 3036", ratingA: 30, disconnectionS: 5, maximumZsOhm: 2.51, source: recomputed },
  { fuse: "BS 3036", ratingA: 45, disconnectionS: 5, maximumZsOhm: 1.51, source: recomputed },
];
