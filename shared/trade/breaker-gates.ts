import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS EN 60898-1",
  clause: "Table 7, tests a to c, 30 °C",
  checked: "secondary copy",
};

/**
 * Thermal gates of a circuit-breaker: at this multiple of its rating it may not trip before `earliestS` and must
 * have tripped by `latestS`. Test b follows test a at once, so it starts hot.
 */
export const breakerGates: readonly {
  test: "a" | "b" | "c";
  multiple: number;
  start: "cold" | "hot";
  aboveRatingA: number;
  toRatingA: number;
  earliestS?: number;
  latestS?: number;
  source: Source;
}[] = [
  { test: "a", multiple: 1.13, start: "cold", aboveRatingA: 0, toRatingA: 63, earliestS: 3600, source },
  { test: "a", multiple: 1.13, start: "cold", aboveRatingA: 63, toRatingA: 125, earliestS: 7200, source },
  { test: "b", multiple: 1.45, start: "hot", aboveRatingA: 0, toRatingA: 63, latestS: 3600, source },
  { test: "b", multiple: 1.45, start: "hot", aboveRatingA: 63, toRatingA: 125, latestS: 7200, source },
  {
    test: "c",
    multiple: 2.55,
    start: "cold",
    aboveRatingA: 0,
    toRatingA: 32,
    earliestS: 1,
    latestS: 60,
    source,
  },
  {
    test: "c",
    multiple: 2.55,
    start: "cold",
    aboveRatingA: 32,
    toRatingA: 125,
    earliestS: 1,
    latestS: 120,
    source,
  },
];
