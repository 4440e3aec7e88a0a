import type { Wiring } from "../wiring/wiring.schema.ts";
import type { Buses } from "./buses.ts";

/** Everything the rules read of a wiring. */
export interface CircuitModel {
  wiring: Wiring;
  buses: Buses;
}
