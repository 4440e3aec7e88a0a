import type { StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { wantsOwnCircuit } from "../circuit/own-circuit-wants.ts";
import { statedLoadW } from "../circuit/point-demand.ts";
import { zonesOfCircuit } from "../circuit/zone-kinds.ts";
import { applianceLimits } from "../trade/appliance-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * Cooking above 2 kW, a water heater over 15 l or comprehensive space heating on a ring, behind a fuse or not.
 * Heating is comprehensive where a storage heater is fed, or several heaters are.
 */
export const heavyOnRing: Rule = {
  id: "heavy-on-ring",
  variants: { cooking: "query", "water-heater": "query", "space-heating": "query" },
  source: applianceLimits.sources.ownCircuitCookingOverW,
  isNeverHidden: true,
  check: (model) =>
    model.zones
      .filter(({ isFused, shape }) => !isFused && shape.rings.length > 0)
      .flatMap((head) => {
        const points = [...new Set(zonesOfCircuit(model, head).flatMap((zone) => zone.points))];
        return [...points.flatMap((id) => single(model, id)), ...heating(model, points)];
      }),
};

const loadFact = (loadW: number | undefined): { powerW?: number } =>
  loadW === undefined ? {} : { powerW: loadW };

function single(model: CircuitModel, id: StationId): (Evidence | Missing)[] {
  const want = wantsOwnCircuit(model, id);
  if (want === false || want === "shower") return [];
  const point = at("station", id);
  if (typeof want === "object") return [missing(point, want.lacks)];
  return evidence(want, [point], {
    point: id,
    limitW: applianceLimits.ownCircuitCookingOverW,
    overLitres: applianceLimits.ownCircuitOverLitres,
    ...loadFact(statedLoadW(model, id)),
  });
}

function heating(model: CircuitModel, points: readonly StationId[]): Evidence[] {
  const of = (kind: string) => points.filter((id) => model.stations.get(id)?.settings?.appliance === kind);
  const storage = of("storage-heater");
  const heaters = [...storage, ...of("space-heater")];
  if (storage.length === 0 && heaters.length < applianceLimits.comprehensiveFromHeaters) return [];
  const loads = heaters.map((id) => statedLoadW(model, id));
  const isEveryLoadStated = loads.every((loadW) => loadW !== undefined);
  const totalW = loads.reduce<number>((sum, loadW) => sum + (loadW ?? 0), 0);
  return evidence(
    "space-heating",
    allAt("station", heaters),
    loadFact(isEveryLoadStated ? totalW : undefined),
  );
}
