import { byId, type ConductorId, roleClass, roleOf, type StationId, stationOf } from "../board/ids.ts";
import { oncePerModel } from "./once-per-model.ts";
import type { ConductorModel } from "./conductor-model.ts";

/** A plate switch that stands in a neutral, with the conductors that put it there. */
export interface SwitchedNeutral {
  switch: StationId;
  conductors: ConductorId[];
  /** Lighting points whose neutral passes through it. */
  lamps: StationId[];
}

/**
 * Plate switches that break the neutral: crossed conductors bring a neutral of a way to one terminal and take it
 * from the other, and no line reaches the switch.
 */
export const switchedNeutrals = oncePerModel((model): readonly SwitchedNeutral[] => {
  const atSwitch = new Map<StationId, ConductorModel[]>();
  for (const conductor of model.crossed) {
    for (const contact of [conductor.from, conductor.to]) {
      const station = stationOf(contact);
      if (model.stations.get(station)?.kind !== "plate-switch" || roleClass(roleOf(contact)) !== "live")
        continue;
      const known = atSwitch.get(station);
      if (known) known.push(conductor);
      else atSwitch.set(station, [conductor]);
    }
  }
  return [...atSwitch].flatMap(([station, list]): SwitchedNeutral[] => {
    const ends = list.map((conductor) => {
      const isFrom = stationOf(conductor.from) === station;
      return isFrom
        ? { switchNode: conductor.fromNode, far: conductor.to, farNode: conductor.toNode }
        : { switchNode: conductor.toNode, far: conductor.from, farNode: conductor.fromNode };
    });
    const isNeutral = ends.every(({ far }) => roleClass(roleOf(far)) === "neutral");
    const isFed = ends.some(({ farNode }) => model.reachOf(farNode).sometimes.length > 0);
    const hasLine = ends.some(({ switchNode }) => model.reachOf(switchNode).sometimes.length > 0);
    const takenFrom = ends.filter(({ farNode }) => model.reachOf(farNode).sometimes.length === 0);
    const fedAt = new Set(ends.filter((end) => !takenFrom.includes(end)).map(({ switchNode }) => switchNode));
    const isBroken = takenFrom.some(({ switchNode }) => !fedAt.has(switchNode));
    if (!isNeutral || !isFed || hasLine || !isBroken) return [];
    const groups = new Set(takenFrom.map(({ farNode }) => model.groupOf(farNode)));
    const lamps = model.lamps.filter(({ neutral }) => groups.has(model.groupOf(neutral)));
    return [
      {
        switch: station,
        conductors: [...new Set(list.map(({ id }) => id))].sort(byId),
        lamps: lamps.map((lamp) => lamp.station),
      },
    ];
  });
});
