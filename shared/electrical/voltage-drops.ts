import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { supply } from "../trade/supply.ts";
import { boardGaps, cableGaps, type Gap } from "./circuit-gaps.ts";
import { electricalOf, type ElectricalModel, pointNodes } from "./electrical-model.ts";
import { takersOf, type TurnCase, turnCases } from "./load-case.ts";
import { statedLoads } from "./stated-loads.ts";
import { type CurrentLoad, dropV, loadNodes, solveWiring, type WiringSolution } from "./wiring-network.ts";
import { circuitsWithFigures, zoneTreeOf } from "./zone-tree.ts";

export interface PointDrop {
  station: StationId;
  zone: Zone;
  dropV: number;
  limitV: number;
  isLighting: boolean;
  /** What its current rises by when it has its turn, in amperes; 0 where it has none. */
  riseA: number;
  /** True where the stated loads lose the most, false where the usual load case does. */
  isStated: boolean;
  /** Points that may draw anything, for nobody has stated it, where one of them in its turn loses the most here. */
  unstated: readonly StationId[];
  /** The most that is lost without them. */
  sureDropV: number;
}

export interface VoltageDrops {
  points: Map<StationId, PointDrop>;
  gaps: Gap[];
  /** The stated loads alone, where there are some. */
  stated: WiringSolution | undefined;
  /** The other load cases, each before a point has its turn, for the currents of the cables. */
  turns: WiringSolution[];
}

type Nodes = Pick<CurrentLoad, "lineNode" | "neutralNode">;

/** A circuit with the points that line and neutral reach the right way round. */
interface Fed {
  zones: Zone[];
  nodes: Map<StationId, Nodes>;
  cases: TurnCase[];
}

/**
 * Voltage lost from the origin to every point, both ways, conductors at 70 °C (BS 7671:2018 525.202 and Appendix 4
 * section 6.4: 3 % for lighting, 5 % for the rest): the worst over the load cases, each socket outlet in turn
 * (`turnCases`) and the stated loads alone. A point that line or neutral does not reach has no drop, nor has a circuit
 * with a crossed conductor; one with a size, length or rating that nobody has said has gaps instead.
 */
export const voltageDropsOf = oncePerModel((model): VoltageDrops => {
  const drops: VoltageDrops = { points: new Map(), gaps: [], stated: undefined, turns: [] };
  const fed: Fed[] = [];
  for (const { zones } of circuitsWithFigures(model).filter(hasCable)) {
    const hasTurns = takersOf(model, zones).size > 0;
    const gaps = [
      ...boardGaps(model, zones),
      ...cableGaps(zones),
      ...(hasTurns ? ratingGaps(model, zones) : []),
    ];
    drops.gaps.push(...gaps);
    if (gaps.length > 0) continue;
    const nodes = nodesOf(model, zones);
    fed.push({ zones, nodes, cases: turnCases(model, zones, (id) => nodes.has(id)) });
  }
  if (fed.length > 0) {
    addStated(model, fed, drops);
    addTurns(model, fed, drops);
  }
  return drops;
});

const hasCable = ({ zones }: { zones: readonly Zone[] }): boolean =>
  zones.some(({ cables }) => cables.length > 0);

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

function nodesOf(model: CircuitModel, zones: readonly Zone[]): Map<StationId, Nodes> {
  const electrical = electricalOf(model);
  const found = new Map<StationId, Nodes>();
  for (const zone of zones) {
    if (zoneTreeOf(model).depthOf(zone) === undefined) continue;
    for (const point of zone.points) {
      const nodes = pointNodes(electrical, model, point);
      if (nodes && isFedRight(electrical, nodes)) found.set(point, nodes);
    }
  }
  return found;
}

/** True where the whole supply voltage, the right way round, is there with nothing on: no short, no swap. */
function isFedRight({ net }: ElectricalModel, nodes: Nodes): boolean {
  const openV = net.open.voltageV[nodes.lineNode]! - net.open.voltageV[nodes.neutralNode]!;
  return Math.abs(openV - supply.nominalV) < 1e-6 * supply.nominalV;
}

function addStated(model: CircuitModel, circuits: readonly Fed[], drops: VoltageDrops): void {
  const { copper, net } = electricalOf(model);
  const stated = circuits.filter(({ cases, nodes }) => {
    const isAnyStated = [...nodes.keys()].some((point) => model.loadsAt.has(point));
    return isAnyStated || cases.length === 0;
  });
  if (stated.length === 0) return;
  const loads = stated.flatMap(({ zones }) =>
    [...statedLoads(model, zones)].flatMap(([point, currentA]): CurrentLoad[] => {
      const nodes = loadNodes(copper, point);
      return nodes ? [{ ...nodes, currentA }] : [];
    }),
  );
  const solution = solveWiring(net, loads);
  drops.stated = solution;
  for (const { zones, nodes } of stated)
    for (const zone of zones)
      for (const station of zone.points) {
        const at = nodes.get(station);
        const lostV = at && dropV(solution, at);
        if (lostV !== undefined)
          add(model, drops, { station, zone, dropV: lostV, riseA: 0, isStated: true, unstated: [] });
      }
}

/** Circuits have nothing in common, so that one solution serves a case of each. */
function addTurns(model: CircuitModel, circuits: readonly Fed[], drops: VoltageDrops): void {
  const { net } = electricalOf(model);
  const farOhm = transferOhms(model, circuits);
  for (let round = 0; ; round++) {
    const here = circuits.flatMap((fed) => {
      const turn = fed.cases[round];
      return turn ? [{ fed, turn }] : [];
    });
    if (here.length === 0) return;
    const solution = solveWiring(
      net,
      here.flatMap(({ fed, turn }) => loadsOf(model, fed, turn)),
    );
    drops.turns.push(solution);
    for (const { fed, turn } of here) addTurn(model, fed, turn, { solution, farOhm, drops });
  }
}

function loadsOf(model: CircuitModel, { nodes }: Fed, { zone, drawsA, headA }: TurnCase): CurrentLoad[] {
  const loads = [...drawsA].flatMap(([point, currentA]): CurrentLoad[] => {
    const at = nodes.get(point);
    return at ? [{ ...at, currentA }] : [];
  });
  const head = headNodes(model, zone, nodes);
  return head ? [...loads, { ...head, currentA: headA }] : loads;
}

const headNodes = (
  model: CircuitModel,
  zone: Zone,
  nodes: ReadonlyMap<StationId, Nodes>,
): Nodes | undefined => {
  const parent = zoneTreeOf(model).parentOf(zone);
  return parent && nodes.get(parent.fcu);
};

interface Adding {
  solution: WiringSolution;
  farOhm: (point: StationId, turn: TurnCase) => number;
  drops: VoltageDrops;
}

function addTurn(model: CircuitModel, { zones, nodes }: Fed, turn: TurnCase, adding: Adding): void {
  const { solution, farOhm, drops } = adding;
  const electrical = electricalOf(model);
  const head = headNodes(model, turn.zone, nodes);
  const headOhm = head ? loopOhm(electrical, head) : 0;
  const unstated = [...turn.takers].filter((id) => model.stations.get(id)?.kind !== "socket-outlet");
  for (const zone of zones) {
    const unit = unitToward(model, turn.zone, zone);
    for (const station of zone.points) {
      const at = nodes.get(station);
      const spreadV = at && dropV(solution, at);
      if (!at || spreadV === undefined) continue;
      const isTaker = turn.takers.has(station);
      // A taker's own turn loses the most at it; at any other point the turn of the taker it shares the most path with.
      const shared = zone === turn.zone ? station : unit;
      const sharedOhm = isTaker
        ? loopOhm(electrical, at)
        : shared === undefined
          ? headOhm
          : farOhm(shared, turn);
      add(model, drops, {
        station,
        zone,
        dropV: spreadV + turn.riseA * (sharedOhm - headOhm),
        riseA: isTaker ? turn.riseA : 0,
        isStated: false,
        unstated,
      });
    }
  }
}

/** The connection unit of one zone by which another hangs on it; undefined where it does not. */
function unitToward(model: CircuitModel, zone: Zone, other: Zone): StationId | undefined {
  const { parentOf, depthOf } = zoneTreeOf(model);
  let parent = parentOf(other);
  for (let depth = depthOf(other) ?? 0; parent && parent.zone !== zone && depth > 0; depth--)
    parent = parentOf(parent.zone);
  return parent?.zone === zone ? parent.fcu : undefined;
}

/**
 * Per point that has no turn itself the largest resistance it shares with a point that has: what is lost there for each
 * ampere drawn at the other. One solution with 1 A at a point of each circuit tells it for all takers.
 */
function transferOhms(
  model: CircuitModel,
  circuits: readonly Fed[],
): (point: StationId, turn: TurnCase) => number {
  const { net } = electricalOf(model);
  const queues = circuits.map(({ nodes, cases }) => {
    const zones = cases.map(({ zone }) => zone);
    const passive = new Set(zones.flatMap(({ points }) => points));
    const isAlwaysTaker = (id: StationId): boolean =>
      cases.every(({ zone, takers }) => !zone.points.includes(id) || takers.has(id));
    return { nodes, cases, points: [...passive].filter((id) => nodes.has(id) && !isAlwaysTaker(id)) };
  });
  const found = new Map<TurnCase, Map<StationId, number>>();
  for (let round = 0; ; round++) {
    const here = queues.flatMap(({ nodes, cases, points }) => {
      const point = points[round];
      const at = point && nodes.get(point);
      return at ? [{ nodes, cases, point, at }] : [];
    });
    if (here.length === 0) break;
    const solution = solveWiring(
      net,
      here.map(({ at }) => ({ ...at, currentA: 1 })),
    );
    for (const { nodes, cases, point } of here)
      for (const turn of cases) {
        const ohms = [...turn.takers].map((taker) => dropV(solution, nodes.get(taker)!) ?? 0);
        const known = found.get(turn) ?? new Map<StationId, number>();
        found.set(
          turn,
          known.set(
            point,
            ohms.reduce((most, each) => Math.max(most, each), 0),
          ),
        );
      }
  }
  return (point, turn) => found.get(turn)?.get(point) ?? 0;
}

const loopOhm = ({ ownOhm }: ElectricalModel, nodes: Nodes): number =>
  ownOhm[nodes.lineNode]! + ownOhm[nodes.neutralNode]!;

function add(
  model: CircuitModel,
  drops: VoltageDrops,
  {
    station,
    zone,
    dropV: lostV,
    riseA,
    isStated,
    unstated,
  }: Omit<PointDrop, "limitV" | "isLighting" | "sureDropV">,
): void {
  const before = drops.points.get(station);
  const sureDropV = Math.max(unstated.length > 0 ? 0 : lostV, before?.sureDropV ?? 0);
  const mostRiseA = Math.max(riseA, before?.riseA ?? 0);
  if (before && before.dropV >= lostV) {
    Object.assign(before, { riseA: mostRiseA, sureDropV });
    return;
  }
  const isLighting = isLightingPoint(model, station);
  const fraction = isLighting ? supply.lightingDropFraction : supply.otherDropFraction;
  drops.points.set(station, {
    station,
    zone,
    dropV: lostV,
    limitV: fraction * supply.nominalV,
    isLighting,
    riseA: mostRiseA,
    isStated,
    unstated,
    sureDropV,
  });
}
