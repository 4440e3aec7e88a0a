import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { supply } from "../trade/supply.ts";
import { boardGaps, cableGaps, type Gap } from "./circuit-gaps.ts";
import { electricalOf, type ElectricalModel, pointNodes, statedCurrentA } from "./electrical-model.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";
import { loadCaseA, zoneRatingA } from "./load-case.ts";
import { type CurrentLoad, dropV, loadNodes, solveWiring, type WiringSolution } from "./wiring-network.ts";
import { circuitsWithFigures, zoneTreeOf } from "./zone-tree.ts";

export interface PointDrop {
  station: StationId;
  zone: Zone;
  dropV: number;
  limitV: number;
  isLighting: boolean;
  /** What its current rises by when it has its turn, in amperes; 0 with stated loads. */
  riseA: number;
  /** True where the loads are stated, false where the usual load case was taken. */
  isStated: boolean;
}

export interface VoltageDrops {
  points: Map<StationId, PointDrop>;
  gaps: Gap[];
  /** Load cases solved, for the currents of the cables. */
  solutions: WiringSolution[];
}

/**
 * Voltage lost from the origin to every point, both ways, conductors at 70 °C (BS 7671:2018 525.202 and Appendix 4
 * section 6.4: 3 % for lighting, 5 % for the rest). Stated loads where a circuit has some; else 20 A at each socket
 * outlet in turn (a connection unit its fuse, a lamp or appliance its load) with the rest of In in equal parts over
 * the other points of the same device or fuse, each at most what it can draw. A point that line or neutral does not
 * reach, or that is shorted or swapped, has no drop; a circuit with a size, length or rating that nobody has said has gaps instead.
 */
export const voltageDropsOf = oncePerModel((model): VoltageDrops => {
  const drops: VoltageDrops = { points: new Map(), gaps: [], solutions: [] };
  const stated: Zone[] = [];
  const assumed: Zone[] = [];
  for (const { zones } of circuitsWithFigures(model)) {
    if (!zones.some((zone) => zone.cables.length > 0)) continue;
    const isStated = zones.some((zone) => zone.points.some((point) => model.loadsAt.has(point)));
    const gaps = [
      ...boardGaps(model, zones),
      ...cableGaps(zones),
      ...(isStated ? [] : ratingGaps(model, zones)),
    ];
    drops.gaps.push(...gaps);
    if (gaps.length === 0) (isStated ? stated : assumed).push(...zones);
  }
  if (stated.length > 0) addStated(model, stated, drops);
  for (let depth = 0; ; depth++) {
    const level = assumed.filter((zone) => zoneTreeOf(model).depthOf(zone) === depth);
    if (level.length === 0) break;
    addAssumed(model, level, drops);
  }
  return drops;
});

function ratingGaps(model: CircuitModel, zones: readonly Zone[]): Gap[] {
  const lacks = (id: StationId, field: string): Gap => ({ kind: "station", id, field, cause: "value" });
  return zones.flatMap((zone) => {
    const { ratingA, station, kind } = zone.upstream;
    const fuses = zone.points.filter((point) => {
      const { kind: pointKind, settings } = model.stations.get(point)!;
      return pointKind === "fcu" && settings?.fuseRatingA === undefined;
    });
    const own = ratingA === undefined && kind === "device" ? [lacks(station, "deviceRatingA")] : [];
    return [...own, ...fuses.map((fcu) => lacks(fcu, "fuseRatingA"))];
  });
}

function addStated(model: CircuitModel, zones: readonly Zone[], drops: VoltageDrops): void {
  const electrical = electricalOf(model);
  const loads = zones.flatMap((zone) =>
    zone.points.flatMap((point): CurrentLoad[] => {
      const nodes = loadNodes(electrical.copper, point);
      const currentA = statedCurrentA(model, point);
      return nodes && currentA !== undefined ? [{ ...nodes, currentA }] : [];
    }),
  );
  const solution = solveWiring(electrical.net, loads);
  drops.solutions.push(solution);
  for (const zone of zones) {
    for (const point of zone.points) {
      const nodes = loadNodes(electrical.copper, point);
      const lostV = nodes && isFedRight(electrical, nodes) ? dropV(solution, nodes) : undefined;
      if (lostV !== undefined)
        add(model, drops, { station: point, zone, dropV: lostV, riseA: 0, isStated: true });
    }
  }
}

/** Zones of one depth at once: none of them lies on the way to another. */
function addAssumed(model: CircuitModel, zones: readonly Zone[], drops: VoltageDrops): void {
  const electrical = electricalOf(model);
  const cases = zones.map((zone) => ({ zone, draws: spreadOf(model, electrical, zone) }));
  const loads = cases.flatMap(({ draws }) =>
    draws.map(({ nodes, spreadA }) => ({ ...nodes, currentA: spreadA })),
  );
  const solution = solveWiring(electrical.net, loads);
  drops.solutions.push(solution);
  for (const { zone, draws } of cases) {
    const head = headOf(model, electrical, zone, solution, drops);
    for (const { station, nodes, mostA, spreadA } of draws) {
      const spreadV = dropV(solution, nodes);
      if (spreadV === undefined || !head) continue;
      // The point's own current rises from its share to its most; what that loses is by its own resistance alone.
      const ownV = (mostA - spreadA) * (loopOhm(electrical, nodes) - head.ohm);
      add(model, drops, {
        station,
        zone,
        dropV: head.beforeV + spreadV - head.spreadV + ownV,
        riseA: mostA - spreadA,
        isStated: false,
      });
    }
  }
}

interface Draw {
  station: StationId;
  nodes: { lineNode: number; neutralNode: number };
  mostA: number;
  spreadA: number;
}

/** What each point of a zone draws at its most, and while another point has its turn. */
function spreadOf(model: CircuitModel, electrical: ElectricalModel, zone: Zone): Draw[] {
  const zoneA = zoneRatingA(model, zone) ?? 0;
  const draws = zone.points.flatMap((station) => {
    const nodes = pointNodes(electrical, model, station);
    const mostA = loadCaseA(model, station, zoneA);
    return nodes && mostA !== undefined && isFedRight(electrical, nodes) ? [{ station, nodes, mostA }] : [];
  });
  const turnA = draws.reduce((most, { mostA }) => Math.max(most, mostA), 0);
  const partA = draws.length > 1 ? Math.max(0, zoneA - turnA) / (draws.length - 1) : 0;
  return draws.map((draw) => ({ ...draw, spreadA: Math.min(partA, draw.mostA) }));
}

/** Where a fused zone begins: what is lost up to its fuse, by this load case and by its own. */
function headOf(
  model: CircuitModel,
  electrical: ElectricalModel,
  zone: Zone,
  solution: WiringSolution,
  drops: VoltageDrops,
): { ohm: number; spreadV: number; beforeV: number } | undefined {
  const parent = zoneTreeOf(model).parentOf(zone);
  if (!parent) return { ohm: 0, spreadV: 0, beforeV: 0 };
  const nodes = pointNodes(electrical, model, parent.fcu);
  const spreadV = nodes && dropV(solution, nodes);
  const before = drops.points.get(parent.fcu);
  if (!nodes || spreadV === undefined || !before) return undefined;
  return { ohm: loopOhm(electrical, nodes), spreadV, beforeV: before.dropV };
}

/** True where the whole supply voltage, the right way round, is there with nothing on: no short, no swap. */
function isFedRight({ net }: ElectricalModel, nodes: { lineNode: number; neutralNode: number }): boolean {
  const openV = net.open.voltageV[nodes.lineNode]! - net.open.voltageV[nodes.neutralNode]!;
  return Math.abs(openV - supply.nominalV) < 1e-6 * supply.nominalV;
}

const loopOhm = ({ ownOhm }: ElectricalModel, nodes: { lineNode: number; neutralNode: number }): number =>
  ownOhm[nodes.lineNode]! + ownOhm[nodes.neutralNode]!;

function add(
  model: CircuitModel,
  drops: VoltageDrops,
  { station, zone, dropV: lostV, riseA, isStated }: Omit<PointDrop, "limitV" | "isLighting">,
): void {
  const isLighting = isLightingPoint(model, station);
  const fraction = isLighting ? supply.lightingDropFraction : supply.otherDropFraction;
  const limitV = fraction * supply.nominalV;
  drops.points.set(station, { station, zone, dropV: lostV, limitV, isLighting, riseA, isStated });
}
