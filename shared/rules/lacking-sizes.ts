import type { Branch, Upstream, Zone } from "../circuit/model.ts";
import { at, missing } from "./evidence.ts";
import type { Missing } from "./rule.ts";

/**
 * What keeps it from being known whether branches with several points are spurs: the size of their cable, or the
 * rating or the kind of the device they hang on.
 */
export const lackingSizes = (
  { spurs, upstream }: Pick<Zone, "spurs" | "upstream">,
  isConcerned: (branch: Branch) => boolean = () => true,
): Missing[] =>
  spurs.lacking
    .filter((branch) => branch.pointCount > 1 && isConcerned(branch))
    .flatMap((branch) => lackingOf(branch, upstream));

/** What keeps it from being known whether the cable of one branch carries its device. */
export const lackingOf = ({ run }: Branch, { station, ratingA }: Upstream): Missing[] => {
  const cables = run.cables.flatMap(({ id, ratingLacks }) =>
    ratingLacks ? [missing(at("cable", id), ratingLacks)] : [],
  );
  if (cables.length > 0) return cables;
  return [missing(at("station", station), ratingA === undefined ? "deviceRatingA" : "deviceStandard")];
};
