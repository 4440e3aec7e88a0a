import type { CableId, StationId } from "../board/ids.ts";
import type { CableModel, Zone } from "./model.ts";
import { pointsBeyond } from "./zone-kinds.ts";

/** Points that one mending would serve, with the cables that feed nothing else. */
export interface OwnBranch {
  points: StationId[];
  cables: CableId[];
  /** Points, boxes, isolators and switches of the branch. */
  stations: StationId[];
}

interface Growing {
  points: StationId[];
  cables: CableId[];
  stations: Set<StationId>;
}

/**
 * Some points of a zone, grouped by the branch they have for themselves; each alone where it stands on a ring or is
 * looped through. Switch and lamp cables, which are in no shape, go with the points they come from.
 */
export const ownBranches = (zone: Zone, points: ReadonlySet<StationId>): OwnBranch[] => {
  const { branches, rings, loops } = zone.shape;
  const groups: Growing[] = [];
  for (let at = 0; at < branches.length; at++) {
    const branch = branches[at];
    const beyond = branch ? pointsBeyond(zone, branch) : [];
    if (!branch || beyond.length === 0 || !beyond.every((id) => points.has(id))) continue;
    const own = branches.slice(branch.index, branch.end);
    groups.push({
      points: beyond,
      stations: new Set(own.map(({ far }) => far)),
      cables: own.flatMap(({ run }) => run.cables.map(({ id }) => id)),
    });
    at = branch.end - 1;
  }
  const grouped = new Set(groups.flatMap((group) => group.points));
  for (const id of points)
    if (!grouped.has(id)) groups.push({ points: [id], stations: new Set([id]), cables: [] });
  const inShape = new Set<CableModel>([
    ...branches.flatMap(({ run }) => run.cables),
    ...[...rings, ...loops].flatMap(({ cables }) => cables),
  ]);
  const loose = zone.cables.filter((cable) => !inShape.has(cable));
  for (const group of groups) grow(group, loose);
  return groups.map(({ points: own, cables, stations }) => ({
    points: own,
    cables,
    stations: [...stations],
  }));
};

/** Takes in the loose cables that hang on a group, until none is added. */
function grow({ stations, cables }: Growing, loose: readonly CableModel[]): void {
  for (let before = -1; before !== cables.length;) {
    before = cables.length;
    for (const { id, fromStation, toStation } of loose) {
      if (cables.includes(id) || (!stations.has(fromStation) && !stations.has(toStation))) continue;
      stations.add(fromStation).add(toStation);
      cables.push(id);
    }
  }
}
