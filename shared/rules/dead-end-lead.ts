import { type StationId, stationOf } from "../board/ids.ts";
import type { CableModel, CircuitModel } from "../circuit/model.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

/** Stations that only pass current on: a cable that ends there feeds nothing. */
function passesOn(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  if (station?.kind === "cooker-control") return station.settings?.hasSocketOutlet !== true;
  return station?.kind === "junction-box" || station?.kind === "isolator";
}

/** Cables by station, for those stations that only pass current on. */
function cablesAt(model: CircuitModel): Map<StationId, CableModel[]> {
  const cables = new Map<StationId, CableModel[]>();
  const note = (station: StationId, cable: CableModel): void => {
    if (!passesOn(model, station)) return;
    const known = cables.get(station);
    if (known) known.push(cable);
    else cables.set(station, [cable]);
  };
  for (const cable of model.cables) {
    if (cable.circuits.length === 0 || cable.conductors.length === 0) continue;
    note(cable.fromStation, cable);
    if (cable.toStation !== cable.fromStation) note(cable.toStation, cable);
  }
  return cables;
}

/** True where all cables at a station are one feed: they go to one other station, each core once. */
function isOneFeed(cables: readonly CableModel[]): boolean {
  const ends = new Set(cables.flatMap(({ fromStation, toStation }) => [fromStation, toStation]));
  const cores = cables.flatMap(({ conductors }) => conductors.map((conductor) => conductor.class));
  return ends.size === 2 && new Set(cores).size === cores.length;
}

const isLive = (model: CircuitModel, station: StationId, cables: readonly CableModel[]): boolean =>
  cables.some(({ conductors }) =>
    conductors.some((conductor) => {
      const node = stationOf(conductor.from) === station ? conductor.fromNode : conductor.toNode;
      return conductor.class === "live" && model.reachOf(node).sometimes.length > 0;
    }),
  );

/** A cable that ends where nothing is fed; cables joined to each other and to no way are only noted. */
export const deadEndLead: Rule = {
  id: "dead-end-lead",
  variants: { live: "danger", dead: "fix", island: "note" },
  source: { kind: "common practice, no source" },
  check: (model) => [
    ...[...cablesAt(model)].flatMap(([station, cables]): Evidence[] => {
      if (!isOneFeed(cables)) return [];
      const places = allAt(
        "cable",
        cables.map(({ id }) => id),
      );
      const variant = isLive(model, station, cables) ? "live" : "dead";
      return evidence(variant, places, {}, [...places, at("station", station)]);
    }),
    ...model.islands.flatMap(({ cables, stations }) =>
      evidence(
        "island",
        allAt(
          "cable",
          cables.map(({ id }) => id),
        ),
        {},
        allAt("station", stations),
      ),
    ),
  ],
};
