import type { StationId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { maximumZsOhm } from "../trade/maximum-zs.ts";
import { boardGaps, cableGaps, type Gap } from "./circuit-gaps.ts";
import { circuitDevice, type CircuitDevice } from "./circuit-device.ts";
import { electricalOf } from "./electrical-model.ts";
import { doesRcdDisconnect, isTouchVoltageSafe, loopOhm } from "./fault-loop.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";
import { circuitsWithFigures, zoneTreeOf } from "./zone-tree.ts";

/** `rcd-only`: in time by the RCD alone. `never`: by nothing. `tt`: electrode and RCD do not match. */
export type LoopResult = "in-time" | "rcd-only" | "never" | "tt";

export interface StationLoop {
  station: StationId;
  zone: Zone;
  zsOhm: number;
  limitOhm: number | undefined;
  answer: LoopResult;
}

export interface CircuitLoops {
  root: Zone;
  zones: Zone[];
  device: CircuitDevice;
  loops: StationLoop[];
}

/**
 * Earth fault loop at every station of every circuit, Zs = Ze + R1 + R2 at 70 °C by all paths that are wired, held to
 * the way's device and, beyond a connection unit, to its fuse as well: one of the two in time is enough. On TT with an
 * RCD nothing is asked of them. A station without line or earth has no loop, nor has a circuit with a crossed
 * conductor; one about which something is not known has gaps instead.
 */
export const earthLoopsOf = oncePerModel((model): { circuits: CircuitLoops[]; gaps: Gap[] } => {
  const result: { circuits: CircuitLoops[]; gaps: Gap[] } = { circuits: [], gaps: [] };
  const { electrodeOhm } = model.wiring.supply ?? {};
  for (const { root, zones } of circuitsWithFigures(model)) {
    if (!zones.some((zone) => zone.cables.length > 0)) continue;
    const { device, gaps } = circuitDevice(model, root, zones);
    const all = [...boardGaps(model, zones), ...cableGaps(zones), ...gaps];
    const lacks = (field: string): Gap => ({
      kind: "station",
      id: root.upstream.station,
      field,
      cause: "value",
    });
    if (device?.isTt && electrodeOhm === undefined) all.push(lacks("electrodeOhm"));
    // On TT the RCD disconnects. Elsewhere a rating without a listed limit is not the same as one that is too slow.
    const isByRcd = device !== undefined && device.isTt && device.rcdMa > 0;
    if (
      device &&
      !isByRcd &&
      maximumZsOhm(device.device, device.ratingA, device.disconnectionS) === undefined
    ) {
      all.push(lacks("maximumZsOhm"));
    }
    result.gaps.push(...all);
    if (!device || all.length > 0) continue;
    const { depthOf } = zoneTreeOf(model);
    const loops = zones.flatMap((zone) => (depthOf(zone) === undefined ? [] : loopsIn(model, zone, device)));
    result.circuits.push({ root, zones, device, loops });
  }
  return result;
});

/** Loop impedance of the supply before the origin: Ze, and on TT the electrode with it. */
export function supplyLoopOhm(model: CircuitModel): number {
  const { earthing = defaults.earthing, zeOhm, electrodeOhm = 0 } = model.wiring.supply ?? {};
  return (zeOhm ?? defaults.zeOhm[earthing]) + (earthing === "TT" ? electrodeOhm : 0);
}

function loopsIn(model: CircuitModel, zone: Zone, device: CircuitDevice): StationLoop[] {
  const { copper, ownOhm, nodesOf } = electricalOf(model);
  const worst = new Map<StationId, { r1: number; r2: number }>();
  for (const station of zone.stations) {
    const { live = [], earth } = nodesOf.get(station) ?? {};
    if (model.stations.get(station)?.kind === "way" || earth === undefined) continue;
    const r2 = ownOhm[earth]!;
    for (const node of live) {
      const r1 = ownOhm[node]!;
      if (r1 + r2 === Infinity || r1 <= (worst.get(station)?.r1 ?? -1)) continue;
      if (model.zoneOfNode(copper.nodes[node]!) === zone) worst.set(station, { r1, r2 });
    }
  }
  const limitOhm = mostLoopOhm(model, zone, device);
  return [...worst].map(([station, { r1, r2 }]) => {
    const zsOhm = loopOhm(supplyLoopOhm(model), r1 + r2);
    return { station, zone, zsOhm, limitOhm, answer: answerTo(model, device, zsOhm, limitOhm, r2) };
  });
}

/** The largest limit of the way's device and of every fuse between it and the zone: any of them may be what opens. */
function mostLoopOhm(
  model: CircuitModel,
  zone: Zone,
  { device, ratingA, disconnectionS }: CircuitDevice,
): number | undefined {
  const limits = [maximumZsOhm(device, ratingA, disconnectionS)];
  const { parentOf } = zoneTreeOf(model);
  for (let at: Zone | undefined = zone; at?.isFused; at = parentOf(at)?.zone) {
    const fuseA = at.upstream.ratingA;
    if (fuseA !== undefined) limits.push(maximumZsOhm("BS 1362", fuseA, disconnectionS));
  }
  const stated = limits.filter((limit) => limit !== undefined);
  return stated.length > 0 ? Math.max(...stated) : undefined;
}

function answerTo(
  model: CircuitModel,
  { rcdMa, isTt }: CircuitDevice,
  zsOhm: number,
  limitOhm: number | undefined,
  r2Ohm: number,
): LoopResult {
  if (isTt && rcdMa > 0) {
    const raOhm = (model.wiring.supply?.electrodeOhm ?? 0) + r2Ohm;
    return isTouchVoltageSafe(raOhm, rcdMa) ? "in-time" : "tt";
  }
  if (limitOhm !== undefined && zsOhm <= limitOhm) return "in-time";
  return doesRcdDisconnect(zsOhm, rcdMa) ? "rcd-only" : "never";
}
