import type { CableId, StationId } from "../board/ids.ts";
import type { Branch, Zone } from "./model.ts";

/** Cables of some branches and all beyond them. */
export const cablesBeyond = (zone: Zone, branches: readonly Branch[]): CableId[] =>
  branches.flatMap(({ index, end }) =>
    zone.shape.branches.slice(index, end).flatMap(({ run }) => run.cables.map(({ id }) => id)),
  );

/** Where branches end: at the stations furthest out of each. */
export const farEnds = (zone: Zone, branches: readonly Branch[]): StationId[] =>
  branches.flatMap(({ index, end }) => {
    const own = zone.shape.branches.slice(index, end);
    const deepest = own.reduce((most, { depth }) => Math.max(most, depth), 0);
    return own.filter(({ depth }) => depth === deepest).map(({ far }) => far);
  });

/** The branch that leaves the ring or the way and that this one is part of. */
export const rootBranch = (zone: Zone, branch: Branch): Branch => {
  let at = branch;
  while (at.parent !== undefined) at = zone.shape.branches[at.parent] ?? at;
  return at;
};
