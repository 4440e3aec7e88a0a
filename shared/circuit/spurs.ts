import { ringLimits } from "../trade/ring-limits.ts";
import { carriesDevice } from "./coordination.ts";
import type { Branch, Shape, Spur, SpurTable } from "./model.ts";

/**
 * What in a zone is a spur. A spur leaves a place that the ring, or cable that carries the device (Iz not below
 * In, 0.725 Iz for a rewireable fuse), reaches; the only leg of a way is never one. On a ring a branch to one point is a spur whatever its size, a
 * branch of full rating to several points is heavy, and smaller cable further out is a spur from it as from a
 * radial. Where a size or the device is not known, the places that hang on it are listed and no more is said.
 */
export const spursOf = (
  shape: Shape,
  { deviceA, factor }: { deviceA: number | undefined; factor: number | undefined },
): SpurTable => {
  const { branches, rings } = shape;
  const table: SpurTable = { spurs: [], heavy: [], legs: [], lacking: [] };
  const first = branches.filter(({ depth }) => depth === 1);
  const hasRing = rings.length > 0;
  const carries = ({ run }: Branch): boolean | undefined => carriesDevice(run.ratingA, deviceA, factor);
  const hasMain = hasRing || first.some((branch) => carries(branch) === true);
  const mayHaveMain = hasMain || (first.length > 1 && first.some((branch) => carries(branch) === undefined));
  // Two legs of several points that cannot carry a device of a ring's size are a ring that is open somewhere: what
  // leaves the way beside them is the spur that it would be on the ring.
  const openLegs = first.filter((branch) => branch.pointCount > 1 && carries(branch) === false);
  const isOpenRing = openLegs.length > 1 && deviceA !== undefined && deviceA >= ringLimits.leastDeviceA;
  const lack = (branch: Branch): void => {
    table.lacking.push(branch);
  };
  const spur = (branch: Branch): void => {
    table.spurs.push(spurFrom(branch, branches));
  };
  for (let at = 0; at < branches.length;) {
    const branch = branches[at];
    if (!branch) break;
    const full = carries(branch);
    const skip = branch.end;
    // Only branches of the main, and those that leave it, are visited: whatever is beyond a spur is part of it.
    at = skip;
    if (branch.depth === 1 && hasRing && branch.pointCount <= 1) spur(branch);
    else if (full === undefined) lack(branch);
    else if (full) {
      if (branch.depth === 1 && hasRing) table.heavy.push(branch);
      at = branch.index + 1;
    } else if (branch.depth > 1 || hasMain || (isOpenRing && branch.pointCount <= 1)) spur(branch);
    else if (mayHaveMain) lack(branch);
    else table.legs.push(branch);
  }
  return table;
};

function spurFrom(first: Branch, all: readonly Branch[]): Spur {
  const branches = all.slice(first.index, first.end);
  const pastPoint = new Map<number, boolean>();
  const spur: Spur = { first, branches, points: [], nearPoints: [], outer: [], isFused: false };
  for (const branch of branches) {
    const before = branch === first ? undefined : all[branch.parent ?? -1];
    const isPast = before !== undefined && (pastPoint.get(before.index) === true || before.points.length > 0);
    pastPoint.set(branch.index, isPast);
    spur.points.push(...branch.points);
    if (!isPast) spur.nearPoints.push(...branch.points);
    const isFirstPast = isPast && before !== undefined && pastPoint.get(before.index) !== true;
    if (isFirstPast && branch.pointCount > 0) spur.outer.push(branch);
  }
  return spur;
}
