import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "./model.ts";

/**
 * The stations between one and its way, nearest first, connection units and the way included. Round a ring and
 * beyond a switch there is no one path: there only the way, or the unit, is named.
 */
export const upstreamStations = (model: CircuitModel, id: StationId): StationId[] => {
  const path: StationId[] = [];
  const seen = new Set<Zone>();
  let station = id;
  let zone = zoneFeeding(model, id);
  while (zone && !seen.has(zone)) {
    seen.add(zone);
    const { branches } = zone.shape;
    let branch = branches.find(({ far }) => far === station);
    while (branch) {
      path.push(branch.near);
      branch = branch.parent === undefined ? undefined : branches[branch.parent];
    }
    const source = zone.upstream.station;
    if (path.at(-1) !== source) path.push(source);
    if (!zone.isFused) break;
    station = source;
    zone = model.fusedLinks.find(({ fcu }) => fcu === source)?.from;
  }
  return path;
};

const zoneFeeding = (model: CircuitModel, id: StationId): Zone | undefined =>
  model.zones.find(({ points }) => points.includes(id)) ??
  model.zones.find(({ stations }) => stations.includes(id));
