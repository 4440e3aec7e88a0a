import type { BreakerCurve } from "./breaker-curves.ts";
import type { Source } from "./source.ts";

const seen: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "Table 41.3",
  checked: "secondary copy",
};
/** The rest follows from 0.95 x 230 V / Ia of regulation 411.4.4, to two decimals. */
const recomputed: Source = { ...seen, checked: "recomputed" };

/** Maximum earth fault loop impedance for BS EN 60898 and BS EN 61009 devices at U0 230 V, conductor hot. */
export const circuitBreakerZs: readonly {
  curve: BreakerCurve;
  ratingA: number;
  maximumZsOhm: number;
  source: Source;
}[] = [
  { curve: "B", ratingA: 6, maximumZsOhm: 7.28, source: seen },
  { curve: "B", ratingA: 10, maximumZsOhm: 4.37, source: recomputed },
  { curve: "B", ratingA: 16, maximumZsOhm: 2.73, source: recomputed },
  { curve: "B", ratingA: 20, maximumZsOhm: 2.19, source: recomputed },
  { curve: "B", ratingA: 25, maximumZsOhm: 1.75, source: recomputed },
  { curve: "B", ratingA: 32, maximumZsOhm: 1.37, source: seen },
  { curve: "B", ratingA: 40, maximumZsOhm: 1.09, source: recomputed },
  { curve: "B", ratingA: 45, maximumZsOhm: 0.97, source: recomputed },
  { curve: "B", ratingA: 50, maximumZsOhm: 0.87, source: recomputed },
  { curve: "C", ratingA: 6, maximumZsOhm: 3.64, source: recomputed },
  { curve: "C", ratingA: 10, maximumZsOhm: 2.19, source: recomputed },
  { curve: "C", ratingA: 16, maximumZsOhm: 1.37, source: recomputed },
  { curve: "C", ratingA: 20, maximumZsOhm: 1.09, source: recomputed },
  { curve: "C", ratingA: 25, maximumZsOhm: 0.87, source: recomputed },
  { curve: "C", ratingA: 32, maximumZsOhm: 0.68, source: recomputed },
  { curve: "C", ratingA: 40, maximumZsOhm: 0.55, source: recomputed },
  { curve: "C", ratingA: 45, maximumZsOhm: 0.49, source: recomputed },
  { curve: "C", ratingA: 50, maximumZsOhm: 0.44, source: recomputed },
  { curve: "D", ratingA: 6, maximumZsOhm: 1.82, source: recomputed },
  { curve: "D", ratingA: 10, maximumZsOhm: 1.09, source: recomputed },
  { curve: "D", ratingA: 16, maximumZsOhm: 0.68, source: recomputed },
  { curve: "D", ratingA: 20, maximumZsOhm: 0.55, source: recomputed },
  { curve: "D", ratingA: 25, maximumZsOhm: 0.44, source: recomputed },
  { curve: "D", ratingA: 32, maximumZsOhm: 0.34, source: recomputed },
  { curve: "D", ratingA: 40, maximumZsOhm: 0.27, source: recomputed },
  { curve: "D", ratingA: 45, maximumZsOhm: 0.24, source: recomputed },
  { curve: "D", ratingA: 50, maximumZsOhm: 0.22, source: recomputed },
];
