import { byId, type ConductorId, type ContactId, roleOf, type StationId, stationOf } from "../board/ids.ts";
import type { CircuitModel } from "./model.ts";

/** A lamp that its two-way or intermediate switches change in some of their positions and not in others. */
export interface HalfSwitchedLamp {
  lamp: StationId;
  switches: StationId[];
  /** Cores between those switches that join common to a strapper, or else the strappers that are missing. */
  cores: ConductorId[];
}

/** Lamps that one of their switches changes only while another stands right, in the order of their ids. */
export const halfSwitchedLamps = (model: CircuitModel): HalfSwitchedLamp[] =>
  model.lamps
    .filter(({ halfControlledBy }) => halfControlledBy.length > 0)
    .map(({ station: lamp, halfControlledBy: switches }) => ({
      lamp,
      switches,
      cores: coresBetween(model, new Set(switches)),
    }));

const isStrapper = (contact: ContactId): boolean => /^strap/.test(roleOf(contact));

/** Plate switches with a core on a strapper or a common, of which nobody has said how they switch. */
export const unsaidSwitches = (model: CircuitModel): StationId[] => {
  const isUnsaid = (id: StationId): boolean => {
    const station = model.stations.get(id);
    return station?.kind === "plate-switch" && station.settings?.switching === undefined;
  };
  if (![...model.used].some(isUnsaid)) return [];
  const ends = model.conductors.flatMap(({ from, to }) => [from, to]);
  const onPair = new Set(ends.filter((end) => roleOf(end) === "common" || isStrapper(end)).map(stationOf));
  return [...onPair].filter(isUnsaid).sort(byId);
};

function coresBetween(model: CircuitModel, switches: ReadonlySet<StationId>): ConductorId[] {
  const cables = model.cables.filter(
    ({ fromStation, toStation }) => switches.has(fromStation) && switches.has(toStation),
  );
  const mixed = cables.flatMap(({ conductors }) =>
    conductors.filter(
      (core) => core.class === "live" && (roleOf(core.from) === "common") !== (roleOf(core.to) === "common"),
    ),
  );
  if (mixed.length > 0) return mixed.map(({ id }) => id);
  return cables.flatMap(({ missing }) =>
    missing.flatMap(({ id, from, class: lost }) => (lost === "live" && isStrapper(from) ? [id] : [])),
  );
}
