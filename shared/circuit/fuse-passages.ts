import { nodeId } from "../wiring/buses.ts";
import type { StationId } from "../board/ids.ts";
import { oncePerModel } from "./once-per-model.ts";
import type { Zone } from "./model.ts";
import { rootBranch } from "./open-legs.ts";

/** A connection unit with both sides on the same side of its fuse. */
export interface FusePassage {
  fcu: StationId;
  zone: Zone;
  /** True where a ring is closed through the unit and by nothing else. */
  isRing: boolean;
}

/**
 * Connection units whose supply and load side are joined by cable, past the fuse. Where the two sides are the ends
 * of two legs of the way and the way has no ring, the ring passes through the unit.
 */
export const fusePassages = oncePerModel((model): readonly FusePassage[] =>
  [...model.stations.values()].flatMap(({ id, kind }): FusePassage[] => {
    if (kind !== "fcu") return [];
    const zone = model.zoneOfNode(nodeId(id, "supply.L"));
    if (!zone || zone.ways.length > 1 || zone !== model.zoneOfNode(nodeId(id, "load.L"))) return [];
    const legs = zone.shape.branches
      .filter(({ far }) => far === id)
      .map((branch) => rootBranch(zone, branch));
    const isRing = !zone.isFused && zone.shape.rings.length === 0 && new Set(legs).size > 1;
    return [{ fcu: id, zone, isRing }];
  }),
);
