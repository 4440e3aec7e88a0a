import { type ContactId, type StationId, stationOf } from "../board/ids.ts";
import type { BoardDescription } from "../board/board.schema.ts";
import type { CableSpec, Reading, Station, Wiring } from "../wiring/wiring.schema.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";
import { type PlannedRoute, routes } from "./plan-route.ts";
import { scenarioEntries } from "./scenario-entries.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";

export interface ToWiringInput {
  scenario: StrippedScenario;
  /** Left out: a board that has just what the scenario asks for. */
  board?: Pick<BoardDescription, "stations"> | undefined;
  built: Built;
  /** Contacts whose state the board cannot tell. */
  unknown?: readonly ContactId[] | undefined;
  readings?: readonly Reading[] | undefined;
  namedFaults?: readonly string[] | undefined;
  /** Way between two stations; made from the plan where it is not passed. Pass it to build it once. */
  routeBetween?: ((a: StationId, b: StationId) => PlannedRoute | undefined) | undefined;
}

const isEmpty = (settings: StationSettings): boolean => Object.keys(settings).length === 0;

function stationsOf({ scenario, board, built }: ToWiringInput): Station[] {
  const wanted = new Map(scenario.stations.map((station) => [station.id, station]));
  const standing: (Station & { settings?: StationSettings | undefined })[] = board
    ? board.stations.map(({ id, kind, label, entries, settings }) => ({
        id,
        kind,
        label,
        entries: entries.map(({ letter, side }) => ({ letter, side })),
        settings,
      }))
    : scenario.stations.map((station) => ({
        id: station.id,
        kind: station.kind,
        entries: scenarioEntries(station),
      }));
  return standing.map(({ settings: fixed, ...station }) => {
    const settings = { ...wanted.get(station.id)?.settings, ...fixed, ...built.settings?.[station.id] };
    return isEmpty(settings) ? station : { ...station, settings };
  });
}

/**
 * The wiring to judge for what is built in a scenario: every station of the board with its settings (what is
 * built beats what the board fixes, which beats what the scenario fixes), every cable with the length and the
 * way of running of the plan where the cable itself states none, and what the scenario wants. A cable to a
 * station without a place on the plan gets no length.
 */
export function toWiring(input: ToWiringInput): Wiring {
  const { scenario, built, unknown } = input;
  const { readings = built.readings, namedFaults = built.namedFaults } = input;
  const stations = stationsOf(input);
  const routeBetween = input.routeBetween ?? routes(scenario.plan);
  const isThere = new Set(stations.map(({ id }) => id));
  const run = (cable: CableSpec): CableSpec => {
    const planned = routeBetween(stationOf(cable.from), stationOf(cable.to));
    if (!planned) return cable;
    const { pathPoints: _pathPoints, worstPiece: _worstPiece, ...route } = planned;
    return { ...route, ...cable };
  };
  return {
    version: 1,
    title: scenario.title.en,
    supply: scenario.supply,
    stations,
    cables: built.cables.map(run),
    loads: scenario.loads
      .filter(({ station }) => isThere.has(station))
      .map(({ name, ...load }) => (name ? { ...load, name: name.en } : load)),
    ...(unknown && unknown.length > 0 ? { unknown: [...unknown] } : {}),
    wants: scenario.requirements,
    taskStations: scenario.stations.map(({ id }) => id),
    ...(readings ? { readings: [...readings] } : {}),
    ...(namedFaults ? { namedFaults: [...namedFaults] } : {}),
  };
}
