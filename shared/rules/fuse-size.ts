import type { StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A fuse above 13 A, above what the load side may have, or above 5 A for lights. */
export const fuseSize: Rule = {
  id: "fuse-size",
  variants: { "over-unit": "fix", "over-allowed": "fix", lighting: "query" },
  source: fuseLimits.sources.mostRatingA,
  variantSources: {
    "over-allowed": {
      kind: "regulation",
      document: "BS 7671:2018",
      clause: "134.1.1",
      checked: "from memory",
    },
    lighting: fuseLimits.sources.mostLightingA,
  },
  isNeverHidden: true,
  check: (model) =>
    [...model.stations.values()].flatMap(({ id, kind, settings }): (Evidence | Missing)[] => {
      if (kind !== "fcu" || !model.used.has(id)) return [];
      const place = at("station", id);
      const fuseA = settings?.fuseRatingA;
      if (fuseA === undefined) return [missing(place, "fuseRatingA")];
      const { mostRatingA, mostLightingA } = fuseLimits;
      if (fuseA > mostRatingA) return evidence("over-unit", [place], { fuseA, mostA: mostRatingA });
      const points = loadSidePoints(model, id);
      const strictest = strictestLimit(model, points);
      if (strictest && fuseA > strictest.mostA) {
        const { point, mostA } = strictest;
        return evidence("over-allowed", [place], { fuseA, mostA, point }, [place, at("station", point)]);
      }
      const untold = points.find((point) => isUntold(model, point));
      if (untold && fuseA > fuseLimits.boilerControlsA) return [missing(at("station", untold), "appliance")];
      const hasLights = points.some((point) => isLightingPoint(model, point));
      if (hasLights && fuseA > mostLightingA)
        return evidence("lighting", [place], { fuseA, mostA: mostLightingA });
      return [];
    }),
};

/** Points the fuse feeds straight: what is behind a further fuse has that one. */
const loadSidePoints = (model: CircuitModel, fcu: StationId): StationId[] => [
  ...new Set(model.fusedLinks.filter((link) => link.fcu === fcu).flatMap(({ to }) => to.points)),
];

/** An appliance of which neither what it is nor its maker's fuse is said: it may be a boiler. */
function isUntold(model: CircuitModel, point: StationId): boolean {
  const station = model.stations.get(point);
  const { appliance, makersFuseA } = station?.settings ?? {};
  return station?.kind === "appliance" && appliance === undefined && makersFuseA === undefined;
}

/** The least fuse that some appliance may have: what its maker says, else 3 A for the controls of a boiler. */
function strictestLimit(
  model: CircuitModel,
  points: readonly StationId[],
): { point: StationId; mostA: number } | undefined {
  const limits = points.flatMap((point) => {
    const { appliance, makersFuseA } = model.stations.get(point)?.settings ?? {};
    const mostA = makersFuseA ?? (appliance === "boiler" ? fuseLimits.boilerControlsA : undefined);
    return mostA === undefined ? [] : [{ point, mostA }];
  });
  const [first, ...rest] = limits;
  return first && rest.reduce((least, next) => (next.mostA < least.mostA ? next : least), first);
}
