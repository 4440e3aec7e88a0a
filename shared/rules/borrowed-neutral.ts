import { byId, type StationId, stationOf } from "../board/ids.ts";
import { isPoint } from "../board/station-kinds.ts";
import { nodeId } from "../wiring/buses.ts";
import { nodesNeeded } from "../circuit/losses.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** Ways whose line reaches a station, by any of its live buses. */
function linesAt(model: CircuitModel, id: StationId): Set<StationId> {
  const station = model.stations.get(id);
  if (!station) return new Set();
  const isPassedOn = station.kind === "way" || station.kind === "junction-box";
  const nodes = isPassedOn ? [nodeId(id, "L"), nodeId(id, "SL")] : nodesNeeded(model, station, "live");
  return new Set(nodes.flatMap((node) => model.reachOf(node).sometimes));
}

/** Neutral conductors of a group that join a station of one circuit to a station of another. */
function crossings(model: CircuitModel, group: number): string[] {
  return model.conductors
    .filter((conductor) => conductor.class === "neutral" && model.groupOf(conductor.fromNode) === group)
    .filter(({ from, to }) => {
      const [a, b] = [linesAt(model, stationOf(from)), linesAt(model, stationOf(to))];
      return a.size > 0 && b.size > 0 && [...a].every((way) => !b.has(way));
    })
    .map(({ id }) => id)
    .sort(byId);
}

/** A point whose neutral reaches the circuit of another way, only or besides its own. */
export const borrowedNeutral: Rule = {
  id: "borrowed-neutral",
  variants: { only: "danger", also: "danger" },
  // Its text as quoted at https://www.diynot.com/diy/threads/borrowed-neutrals.158034/post-1066890
  source: { kind: "regulation", document: "BS 7671:2018", clause: "314.4", checked: "secondary copy" },
  check: (model) => {
    if (model.circuits.length < 2) return [];
    const borrowed = new Map<string, { group: number; variant: string; stations: StationId[] }>();
    for (const station of model.stations.values()) {
      const [node] = isPoint(station.kind) ? nodesNeeded(model, station, "neutral") : [];
      const neutrals = node === undefined ? [] : model.reachOf(node).sometimes;
      if (node === undefined || neutrals.length === 0) continue;
      const lines = linesAt(model, station.id);
      if (lines.size === 0 || neutrals.every((way) => lines.has(way))) continue;
      const variant = neutrals.some((way) => lines.has(way)) ? "also" : "only";
      const group = model.groupOf(node);
      const known = borrowed.get(`${group} ${variant}`) ?? { group, variant, stations: [] };
      known.stations.push(station.id);
      borrowed.set(`${group} ${variant}`, known);
    }
    return [...borrowed.values()].flatMap(({ group, variant, stations }) => {
      const leads = allAt("conductor", crossings(model, group));
      const places = allAt("station", stations);
      return evidence(variant, leads.length > 0 ? leads : places, {}, places);
    });
  },
};
