import type { Source } from "./source.ts";

/** Instantaneous tripping type of a BS EN 60898 or BS EN 61009 device. */
export type BreakerCurve = "B" | "C" | "D";

const source: Source = {
  kind: "standard",
  document: "BS EN 60898-1",
  clause: "Table 7, tests d and e, 30 °C",
  checked: "secondary copy",
};

/** Multiples of the rating: below the first no instantaneous trip (0.1 s), at the second a trip within 0.1 s. */
export const breakerCurves: readonly {
  curve: BreakerCurve;
  holdsMultiple: number;
  tripsMultiple: number;
  instantaneousS: number;
  source: Source;
}[] = [
  { curve: "B", holdsMultiple: 3, tripsMultiple: 5, instantaneousS: 0.1, source },
  { curve: "C", holdsMultiple: 5, tripsMultiple: 10, instantaneousS: 0.1, source },
  { curve: "D", holdsMultiple: 10, tripsMultiple: 20, instantaneousS: 0.1, source },
];
