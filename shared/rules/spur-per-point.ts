import type { StationId } from "../board/ids.ts";
import type { Spur } from "../circuit/model.ts";
import { spurLimits } from "../trade/spur-limits.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** Two unfused spurs from one point or box on the ring, or from the way of a ring. */
export const spurPerPoint: Rule = {
  id: "spur-per-point",
  variants: { two: "fix" },
  source: { kind: "common practice, no source" },
  check: (model) =>
    model.zones.flatMap(({ shape, spurs }) => {
      if (shape.rings.length === 0) return [];
      const byPlace = new Map<StationId, Spur[]>();
      for (const spur of spurs.spurs) {
        if (spur.isFused || spur.first.depth !== 1 || spur.points.length === 0) continue;
        byPlace.set(spur.first.near, [...(byPlace.get(spur.first.near) ?? []), spur]);
      }
      return [...byPlace].flatMap(([station, list]) => {
        if (list.length <= spurLimits.unfusedSpursPerPlace) return [];
        const cables = list.flatMap(({ first }) => first.run.cables.map(({ id }) => id));
        const place = at("station", station);
        return evidence("two", [place], { spurs: list.length }, [place, ...allAt("cable", cables)]);
      });
    }),
};
