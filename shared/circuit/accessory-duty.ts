import type { StationId } from "../board/ids.ts";
import { usualRatingA } from "../trade/accessory-rating.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { CircuitModel, Zone } from "./model.ts";
import { pointDemand } from "./point-demand.ts";
import { hasSocketOutlet, isLightingPoint, pointsBeyond } from "./zone-kinds.ts";

/** What an accessory may be asked to carry, in amperes, or the value that keeps it from being known. */
export type Duty = { carriesA: number } | { lacks: { station: StationId; field: string } };

/**
 * The most a plate switch, isolator, control or box is asked to carry: a plate switch the lights it works, a box on a
 * branch what lies beyond it, anything else its device or fuse; never more than that. Undefined where none feeds it.
 */
export const accessoryDuty = (model: CircuitModel, station: Station): Duty | undefined => {
  const duties = zonesAt(model, station.id).map((zone) => dutyIn(model, zone, station));
  return duties.reduce<Duty | undefined>((most, duty) => {
    if (!most || "lacks" in duty) return duty;
    return "lacks" in most || most.carriesA >= duty.carriesA ? most : duty;
  }, undefined);
};

/** The parts a station lies in: several where its buses belong to more than one fuse or device. */
const zonesAt = (model: CircuitModel, id: StationId): Zone[] =>
  model.zones.filter(({ stations }) => stations.includes(id));

function dutyIn(model: CircuitModel, zone: Zone, station: Station): Duty {
  const { ratingA, station: source, kind } = zone.upstream;
  const isLightSwitch = station.kind === "plate-switch" && station.settings?.poles !== 2;
  const demandA = isLightSwitch
    ? sumA(model, lampsOf(model, station.id))
    : station.kind === "junction-box"
      ? boxDemandA(model, zone, station.id)
      : undefined;
  if (demandA !== undefined && (ratingA === undefined || demandA <= ratingA)) return { carriesA: demandA };
  if (ratingA !== undefined) return { carriesA: ratingA };
  return { lacks: { station: source, field: kind === "fuse" ? "fuseRatingA" : "deviceRatingA" } };
}

/** Rating usual on a switch, control or box that does not say, in amperes; an isolator has no usual one. */
export const usualAccessoryRatingA = (model: CircuitModel, { id, kind }: Station): number | undefined => {
  if (kind === "plate-switch") return usualRatingA("plate switch, lighting");
  if (kind === "cooker-control") return usualRatingA("cooker control unit");
  if (kind !== "junction-box") return undefined;
  const isOfLights = zonesAt(model, id).some(
    (zone) => zone.points.some((point) => isLightingPoint(model, point)) && !hasSocketOutlet(model, zone),
  );
  return usualRatingA(isOfLights ? "junction box, lighting" : "junction box, socket circuits");
};

const lampsOf = (model: CircuitModel, id: StationId): StationId[] =>
  model.lamps.filter(({ controlledBy }) => controlledBy.includes(id)).map(({ station }) => station);

/** What lies beyond a box on a branch; undefined on a ring, in a loop, or where a point is not known. */
function boxDemandA(model: CircuitModel, zone: Zone, id: StationId): number | undefined {
  const branch = zone.shape.branches.find(({ far }) => far === id);
  return branch && sumA(model, pointsBeyond(zone, branch));
}

function sumA(model: CircuitModel, points: readonly StationId[]): number | undefined {
  let totalA = 0;
  for (const point of points) {
    const demand = pointDemand(model, point);
    if ("lacks" in demand) return undefined;
    totalA += demand.demandA;
  }
  return totalA;
}
