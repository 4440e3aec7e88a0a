import type { StationId } from "../board/ids.ts";
import type { Branch, Spur } from "../circuit/model.ts";
import { isRingCircuit } from "../circuit/zone-kinds.ts";
import { spurLimits } from "../trade/spur-limits.ts";
import { allAt, at, evidence } from "./evidence.ts";
import { lackingSizes } from "./lacking-sizes.ts";
import type { Rule } from "./rule.ts";

/** Two unfused spurs from one point or box on the ring, or from the way of a ring. */
export const spurPerPoint: Rule = {
  id: "spur-per-point",
  variants: { two: "fix" },
  source: { kind: "common practice, no source" },
  check: (model) =>
    model.zones
      .filter((zone) => isRingCircuit(model, zone))
      .flatMap((zone) => {
        const { spurs } = zone;
        const byPlace = new Map<StationId, Spur[]>();
        for (const spur of spurs.spurs) {
          if (spur.isFused || spur.first.depth !== 1 || spur.points.length === 0) continue;
          byPlace.set(spur.first.near, [...(byPlace.get(spur.first.near) ?? []), spur]);
        }
        // A branch that may be a spur counts where it would make one too many.
        const open = spurs.lacking.filter(({ depth }) => depth === 1).map(({ near }) => near);
        const isOpen = ({ depth, near }: Branch): boolean => {
          const certain = byPlace.get(near)?.length ?? 0;
          const possible = certain + open.filter((station) => station === near).length;
          return (
            depth === 1 &&
            certain <= spurLimits.unfusedSpursPerPlace &&
            possible > spurLimits.unfusedSpursPerPlace
          );
        };
        const found = [...byPlace].flatMap(([station, list]) => {
          if (list.length <= spurLimits.unfusedSpursPerPlace) return [];
          const cables = list.flatMap(({ first }) => first.run.cables.map(({ id }) => id));
          const place = at("station", station);
          return evidence("two", [place], { spurs: list.length }, [place, ...allAt("cable", cables)]);
        });
        return [...found, ...lackingSizes(zone, isOpen)];
      }),
};
