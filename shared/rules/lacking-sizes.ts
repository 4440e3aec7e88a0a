import type { Branch, Zone } from "../circuit/model.ts";
import { at, missing } from "./evidence.ts";
import type { Missing } from "./rule.ts";

/**
 * What keeps it from being known whether branches with several points are spurs: the size of their cable, or the
 * rating of the device they hang on.
 */
export const lackingSizes = (
  { spurs, upstream }: Pick<Zone, "spurs" | "upstream">,
  isConcerned: (branch: Branch) => boolean = () => true,
): Missing[] =>
  spurs.lacking
    .filter((branch) => branch.pointCount > 1 && isConcerned(branch))
    .flatMap(({ run }) => {
      const cables = run.cables.flatMap(({ id, ratingLacks }) =>
        ratingLacks ? [missing(at("cable", id), ratingLacks)] : [],
      );
      if (cables.length > 0) return cables;
      return upstream.ratingA === undefined
        ? [missing(at("station", upstream.station), "deviceRatingA")]
        : [];
    });
