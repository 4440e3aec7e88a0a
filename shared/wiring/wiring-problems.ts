import { cableId, contactId, type ContactId, type EntryId, type StationId } from "../board/ids.ts";
import { coreRoles, isPoint } from "../board/station-kinds.ts";
import { busesOf, nodeOfFront } from "./buses.ts";
import type { FieldProblem } from "../reading/problem.ts";
import { repeats } from "../reading/repeats.ts";
import {
  entryContacts,
  absentEntry,
  absentFcu,
  absentStation,
  absentWay,
  listed,
  type Stations,
} from "./absent-names.ts";
import { stationsById } from "./conductors-of.ts";
import { settingProblems } from "../board/setting-problems.ts";
import type { CableSpec, Load, Requirement, Station, Wiring } from "./wiring.schema.ts";

export function stationProblems(stations: readonly Station[]): FieldProblem[] {
  return [
    ...repeats(
      stations.map(({ id }) => id),
      (index) => `stations[${index}].id`,
      "station",
    ),
    ...stations.flatMap((station, index) => {
      const field = `stations[${index}]`;
      const entries = station.entries ?? [];
      return [
        ...settingProblems(`${field}.settings`, station.kind, station.settings),
        ...repeats(
          entries.map(({ letter }) => letter),
          (entry) => `${field}.entries[${entry}].letter`,
          "entry",
        ),
        ...entries.flatMap(({ side }, entry) =>
          coreRoles(station.kind, side, station.settings?.switching)
            ? []
            : [
                {
                  field: `${field}.entries[${entry}].side`,
                  message: `a ${station.kind} has no ${side} side`,
                  remedy: "Give the entry a side that stations of this kind have.",
                },
              ],
        ),
      ];
    }),
  ];
}

function conductorProblems(field: string, cable: CableSpec, stations: Stations): FieldProblem[] {
  const there = [entryContacts(cable.from, stations) ?? [], entryContacts(cable.to, stations) ?? []];
  const pairs =
    cable.conductors?.map(([from, to]) => [contactId(cable.from, from), contactId(cable.to, to)]) ?? [];
  return [
    ...repeats(
      pairs.map((pair) => pair.toSorted().join("~")),
      (index) => `${field}[${index}]`,
      "conductor",
    ),
    ...pairs.flatMap((pair, index) => [
      ...pair.flatMap((contact, end) =>
        there[end]?.some((one) => one === contact)
          ? []
          : [
              {
                field: `${field}[${index}][${end}]`,
                message: `there is no contact ${contact}`,
                remedy: `Contacts there: ${listed(there[end] ?? [])}.`,
              },
            ],
      ),
      ...(pair[0] === pair[1]
        ? [
            {
              field: `${field}[${index}]`,
              message: "a conductor joins a contact to itself",
              remedy: "Name two contacts.",
            },
          ]
        : []),
    ]),
  ];
}

/** Complains of cables that end nowhere, stand twice, or name conductor positions that their entries lack. */
export function cableProblems(
  field: string,
  cables: readonly CableSpec[],
  stations: Stations,
): FieldProblem[] {
  return [
    ...repeats(
      cables.map(({ from, to }) => cableId(from, to)),
      (index) => `${field}[${index}]`,
      "cable",
    ),
    ...cables.flatMap((cable, index) => {
      const at = `${field}[${index}]`;
      const ends = [
        ...absentEntry(`${at}.from`, cable.from, stations),
        ...absentEntry(`${at}.to`, cable.to, stations),
      ];
      if (ends.length > 0) return ends;
      if (cable.from === cable.to && !cable.conductors)
        return [
          {
            field: at,
            message: "a whole cable begins and ends at one entry",
            remedy: "Give it two entries, or list the single conductors in conductors.",
          },
        ];
      return conductorProblems(`${at}.conductors`, cable, stations);
    }),
  ];
}

/** Complains of loads at stations that are not there or take no load. */
export function loadProblems(loads: readonly Pick<Load, "station">[], stations: Stations): FieldProblem[] {
  return loads.flatMap(({ station: id }, index) => {
    const field = `loads[${index}].station`;
    const station = stations.get(id);
    if (!station) return absentStation(field, id, stations);
    if (isPoint(station.kind) || station.kind === "cooker-control") return [];
    return [
      {
        field,
        message: `nothing takes current at a ${station.kind}`,
        remedy: "Put the load at a socket outlet, FCU, appliance, luminaire or ceiling rose.",
      },
    ];
  });
}

/** Complains of requirements about stations and entries that are not there. */
export function wantProblems(
  field: string,
  wants: readonly Requirement[],
  stations: Stations,
): FieldProblem[] {
  return wants.flatMap((want, index) => {
    const at = `${field}[${index}]`;
    const each = (ids: readonly StationId[]): FieldProblem[] =>
      ids.flatMap((id, index) => absentStation(`${at}.stations[${index}]`, id, stations));
    switch (want.kind) {
      case "served":
      case "in-ring":
      case "unfused-spur":
      case "fuse":
        return each(want.stations);
      case "through-fcu":
        return [...each(want.stations), ...(want.fcu ? absentFcu(`${at}.fcu`, want.fcu, stations) : [])];
      case "own-switch":
        return [...each(want.stations), ...(want.by ? absentStation(`${at}.by`, want.by, stations) : [])];
      case "sized":
        return absentWay(`${at}.way`, want.way, stations);
      case "thrift":
        return [];
      case "one-circuit":
        return [...each(want.stations), ...(want.way ? absentWay(`${at}.way`, want.way, stations) : [])];
      case "shape":
        return absentWay(`${at}.of`, want.of, stations);
      case "kept":
        return want.cables.flatMap((cable, index) =>
          (cable.split("~") as EntryId[]).flatMap((entry) =>
            absentEntry(`${at}.cables[${index}]`, entry, stations),
          ),
        );
      case "device":
      case "readings":
        return absentWay(`${at}.way`, want.way, stations);
      case "fault-named":
        return [];
    }
  });
}

/**
 * What the schema of a wiring cannot say: ids that are there twice, stations, entries and contacts that are not
 * there, settings at the wrong kind of station. A learner's mistake is none of these: it can always be written.
 */
export function wiringProblems(wiring: Wiring): FieldProblem[] {
  const stations = stationsById(wiring.stations);
  const inStations = stationProblems(wiring.stations);
  // Buses are only made of stations that hold together.
  const buses = inStations.length === 0 ? busesOf(wiring) : undefined;
  const absentContact = (field: string, contact: ContactId): FieldProblem[] => {
    const node = buses && nodeOfFront(contact, buses);
    if (!buses || node) return [];
    return [
      { field, message: `there is no contact ${contact}`, remedy: "Name a contact of one of the stations." },
    ];
  };
  return [
    ...inStations,
    ...cableProblems("cables", wiring.cables, stations),
    ...loadProblems(wiring.loads ?? [], stations),
    ...wantProblems("wants", wiring.wants ?? [], stations),
    ...(wiring.unknown ?? []).flatMap((contact, index) => absentContact(`unknown[${index}]`, contact)),
    ...(wiring.taskStations ?? []).flatMap((id, index) =>
      absentStation(`taskStations[${index}]`, id, stations),
    ),
    ...(wiring.readings ?? []).flatMap(({ way, red, black }, index) => [
      ...absentWay(`readings[${index}].way`, way, stations),
      ...(red ? absentContact(`readings[${index}].red`, red) : []),
      ...(black ? absentContact(`readings[${index}].black`, black) : []),
    ]),
  ];
}
