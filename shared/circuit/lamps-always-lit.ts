import type { StationId } from "../board/ids.ts";
import { isSwitchedFcu } from "./defaults.ts";
import type { CircuitModel, Lamp } from "./model.ts";
import { separatorsOf } from "./separators.ts";

/** Lamps lit in every position of the plate switches and switched by nothing else, that share one live conductor. */
export interface LampsAlwaysLit {
  lamps: StationId[];
  /** Plate switches of the same circuit part that are wired and turn nothing off. */
  idleSwitches: StationId[];
}

const isSwitch = (model: CircuitModel, id: StationId): boolean => {
  const station = model.stations.get(id);
  if (station?.kind === "fcu") return isSwitchedFcu(station);
  return station?.kind === "isolator" || station?.kind === "cooker-control";
};

/** Lamps that nothing turns off, by the conductor that feeds them; a switched connection unit or an isolator counts. */
export const lampsAlwaysLit = (model: CircuitModel): LampsAlwaysLit[] => {
  const always = model.lamps.filter(
    ({ live, isLitAlways }) =>
      isLitAlways && !separatorsOf(model, "live")(live)?.some((id) => isSwitch(model, id)),
  );
  if (always.length === 0) return [];
  const working = new Set(model.lamps.flatMap(({ controlledBy }) => controlledBy));
  const byGroup = new Map<number, Lamp[]>();
  for (const lamp of always) {
    const group = model.groupOf(lamp.live);
    byGroup.set(group, [...(byGroup.get(group) ?? []), lamp]);
  }
  return [...byGroup.values()].map((lamps) => {
    const zones = new Set(lamps.flatMap(({ live }) => model.zoneOfNode(live) ?? []));
    const idle = [...zones].flatMap(({ stations }) =>
      stations.filter((id) => model.stations.get(id)?.kind === "plate-switch" && !working.has(id)),
    );
    return { lamps: lamps.map(({ station }) => station), idleSwitches: idle };
  });
};
