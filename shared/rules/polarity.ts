import { byId, roleClass, roleOf, type StationId, stationOf } from "../board/ids.ts";
import type { ConductorModel } from "../circuit/conductor-model.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { switchedNeutrals } from "../circuit/switched-neutrals.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

const isLineOrNeutral = ({ from, to }: ConductorModel): boolean =>
  roleClass(roleOf(from)) !== "earth" && roleClass(roleOf(to)) !== "earth";

/** Stations at which every line and neutral conductor is crossed: the swap was made there. */
function swappedStations(model: CircuitModel, crossed: readonly ConductorModel[]): Set<StationId> {
  const stations = new Set(crossed.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]));
  for (const { fromStation, toStation, conductors } of model.cables) {
    if (stations.size === 0) break;
    if (!conductors.some(({ class: own }) => own === "live" || own === "neutral")) continue;
    stations.delete(fromStation);
    stations.delete(toStation);
  }
  for (const station of stations) if (model.stations.get(station)?.kind === "way") stations.delete(station);
  return stations;
}

/** Where a crossed conductor is put right: the station that is swapped as a whole, or else its cable. */
function placeOf(conductor: ConductorModel, swapped: ReadonlySet<StationId>): string {
  const [a, b] = [stationOf(conductor.from), stationOf(conductor.to)];
  if (isLineOrNeutral(conductor) && swapped.has(a) !== swapped.has(b)) return swapped.has(a) ? a : b;
  return conductor.cable;
}

/**
 * A conductor lands on another class of role: line on neutral or earth. Neutral on earth is `neutral-earth`, a
 * switch in the neutral is `switched-neutral`, and line on a switched line or a strapper is no polarity fault.
 */
export const polarity: Rule = {
  id: "polarity",
  variants: { crossed: "danger" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.6", checked: "from memory" },
  check: (model) => {
    if (model.crossed.length === 0) return [];
    const switched = new Set(switchedNeutrals(model).flatMap(({ conductors }) => conductors));
    const crossed = model.crossed.filter(
      ({ id, from, to }) =>
        !switched.has(id) && (roleClass(roleOf(from)) === "live" || roleClass(roleOf(to)) === "live"),
    );
    if (crossed.length === 0) return [];
    const swapped = swappedStations(model, crossed.filter(isLineOrNeutral));
    const byPlace = new Map<string, ConductorModel[]>();
    for (const conductor of crossed) {
      const place = placeOf(conductor, swapped);
      byPlace.set(place, [...(byPlace.get(place) ?? []), conductor]);
    }
    return [...byPlace].flatMap(([place, list]) => {
      const sorted = list.sort((a, b) => byId(a.id, b.id));
      const [first] = sorted;
      if (!first) return [];
      const where = at(place.includes("~") ? "cable" : "station", place);
      const contacts = allAt(
        "contact",
        sorted.flatMap(({ from, to }) => [from, to]),
      );
      return evidence(
        "crossed",
        allAt(
          "conductor",
          sorted.map(({ id }) => id),
        ),
        { from: first.from, to: first.to },
        [where, ...contacts],
      );
    });
  },
};
