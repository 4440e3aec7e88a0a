import type { Branch, Zone } from "../circuit/model.ts";
import type { OpenRing } from "../circuit/open-legs.ts";
import { at, missing } from "./evidence.ts";
import type { Missing } from "./rule.ts";

/**
 * What keeps it from being known whether branches with several points are spurs: the size of their cable, or the
 * rating or the kind of the device they hang on.
 */
export const lackingSizes = (zone: Zone, isConcerned: (branch: Branch) => boolean = () => true): Missing[] =>
  zone.spurs.lacking
    .filter((branch) => branch.pointCount > 1 && isConcerned(branch))
    .flatMap((branch) => lackingOf(branch, zone));

/**
 * What keeps it from being known whether one branch is a spur: the size of its own cable, or of the legs beside it that
 * it may leave; else what is not said of the device.
 */
export const lackingOf = (branch: Branch, { shape, upstream }: Zone): Missing[] => {
  const own = unsized([branch]);
  if (own.length > 0) return own;
  const { station, ratingA } = upstream;
  if (ratingA === undefined) return [missing(at("station", station), "deviceRatingA")];
  const isThin = branch.run.ratingA !== undefined && branch.run.ratingA < ratingA;
  const beside = isThin ? unsized(shape.branches.filter(({ depth }) => depth === 1)) : [];
  return beside.length > 0 ? beside : [missing(at("station", station), "deviceStandard")];
};

/** What keeps it from being known whether a ring was meant. */
export const lackingOfOpenRing = (open: OpenRing, zone: Zone): Missing[] => {
  if (open.is === "no-device") return [missing(at("station", zone.upstream.station), "deviceRatingA")];
  return open.is === "unsized" ? open.branches.flatMap((branch) => lackingOf(branch, zone)) : [];
};

const unsized = (branches: readonly Branch[]): Missing[] =>
  branches.flatMap(({ run }) =>
    run.cables.flatMap(({ id, ratingLacks }) => (ratingLacks ? [missing(at("cable", id), ratingLacks)] : [])),
  );
