import type { CableId, StationId } from "../board/ids.ts";
import { cutOffBy, isCookerControl } from "../circuit/cut-off.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { wantsOwnCircuit } from "../circuit/own-circuit-wants.ts";
import { applianceLimits } from "../trade/appliance-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A cooker, hob or oven without a control switch, or with one more than 2 m away. */
export const cookerControl: Rule = {
  id: "cooker-control",
  variants: { none: "fix", far: "fix" },
  source: applianceLimits.sources.cookerControlMostM,
  explains: ["isolation"],
  check: (model) =>
    [...cutOffBy(model)].flatMap(([id, cutters]): (Evidence | Missing)[] => {
      const want = wantsOwnCircuit(model, id);
      if (!isFed(model, id)) return [];
      if (typeof want === "object" && want.lacks === "appliance")
        return [missing(at("station", id), want.lacks)];
      if (want !== "cooking") return [];
      const controls = cutters.filter((cutter) => isCookerControl(model, cutter));
      return controls.length === 0
        ? evidence("none", [at("station", id)], { point: id, mostM: applianceLimits.cookerControlMostM })
        : nearest(model, id, controls);
    }),
};

const isFed = (model: CircuitModel, id: StationId): boolean =>
  model.zones.some(({ points }) => points.includes(id));

/** The control that is near enough counts; else the one nearest by what is stated or laid. */
function nearest(model: CircuitModel, id: StationId, controls: readonly StationId[]): (Evidence | Missing)[] {
  const { cookerControlMostM: mostM } = applianceLimits;
  const distances = controls.map((control) => ({ control, ...distanceTo(model, control, id) }));
  if (distances.some(({ distanceM }) => distanceM !== undefined && distanceM <= mostM)) return [];
  const unknown = distances.find(({ distanceM }) => distanceM === undefined);
  if (unknown)
    return [
      unknown.lacking
        ? missing(at("cable", unknown.lacking), "lengthM")
        : missing(at("station", unknown.control), "distanceToApplianceM"),
    ];
  const [first, ...rest] = distances;
  const near = rest.reduce(
    (best, next) => ((next.distanceM ?? 0) < (best?.distanceM ?? 0) ? next : best),
    first,
  );
  if (near?.distanceM === undefined) return [];
  const places = [at("station", near.control), at("station", id)];
  const facts = { point: id, control: near.control, distanceM: near.distanceM, mostM };
  return evidence("far", [at("station", near.control)], facts, places);
}

/**
 * As stated at the control or switch; else by the route of the cables between the two, or the cable of it that has no
 * length. Neither where no one route leads from the one to the other.
 */
function distanceTo(
  model: CircuitModel,
  control: StationId,
  id: StationId,
): { distanceM?: number; lacking?: CableId } {
  const stated = model.stations.get(control)?.settings?.distanceToApplianceM;
  if (stated !== undefined) return { distanceM: stated };
  const { branches = [] } = model.zones.find(({ points }) => points.includes(id))?.shape ?? {};
  let distanceM = 0;
  let branch = branches.find(({ far }) => far === id);
  for (; branch; branch = branch.parent === undefined ? undefined : branches[branch.parent]) {
    for (const { id: cable, lengthM } of branch.run.cables)
      if (lengthM === undefined) return { lacking: cable };
    distanceM += Math.max(...branch.run.cables.map(({ lengthM = 0 }) => lengthM));
    if (branch.near === control) return { distanceM };
  }
  return {};
}
