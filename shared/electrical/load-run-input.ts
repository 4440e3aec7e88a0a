import type { CableId, StationId } from "../board/ids.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import type { RunLoad } from "./run-world.ts";

/** A load switched on or off at a time. */
export interface Switching {
  atS: number;
  load: string;
  isOn: boolean;
}

/** What is run: a wiring as it was built, its loads, when each is switched, and for how long. */
export interface LoadRunInput {
  wiring: Pick<Wiring, "cables" | "supply">;
  built: AsBuilt;
  loads: readonly RunLoad[];
  programme: readonly Switching[];
  durationS: number;
  /** Seconds between two points of the series. */
  stepS: number;
  /** Rating of the device or fuse each cable relies on; left out, its own rating stands for it. */
  deviceA?: ReadonlyMap<CableId, number>;
  /** Left out: as many lamps lit as there can be. */
  positions?: ReadonlyMap<StationId, 0 | 1>;
}
