import * as fc from "fast-check";
import { contactId, entryId, type Role, roleOf, stationId } from "../../../shared/board/ids.ts";
import type { Side, StationKind } from "../../../shared/board/station-kinds.ts";
import { contactsAt, entriesOf } from "../../../shared/wiring/buses.ts";
import { conductorsOf, stationsById } from "../../../shared/wiring/conductors-of.ts";
import {
  type CableSpec,
  type Reading,
  type Station,
  testKinds,
  type Wiring,
} from "../../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";

const part = (
  id: string,
  kind: StationKind,
  sides: Partial<Record<Side, number>>,
  settings: StationSettings = {},
) => {
  const entries = Object.entries(sides).flatMap(([side, count]) =>
    Array.from({ length: count }, () => side as Side),
  );
  return {
    id: stationId(id),
    kind,
    entries: entries.map((side, index) => ({ letter: "abcdefgh"[index] ?? "z", side })),
    settings,
  } satisfies Station;
};

/** A board with every kind of station on it. */
export const board: Station[] = [
  part("way-1", "way", { feed: 3 }, { deviceRatingA: 32, deviceStandard: "BS EN 60898", deviceCurve: "B" }),
  part("way-2", "way", { feed: 2 }, { deviceRatingA: 6, deviceStandard: "BS EN 60898", deviceCurve: "B" }),
  part("socket-1", "socket-outlet", { feed: 4 }, { gangs: 2 }),
  part("socket-2", "socket-outlet", { feed: 3 }, { gangs: 2 }),
  part("socket-3", "socket-outlet", { feed: 3 }, { gangs: 1 }),
  part("box-1", "junction-box", { feed: 3, switch: 1, lamp: 1 }),
  part("fcu-1", "fcu", { supply: 2, load: 2 }, { fuseRatingA: 13, switched: false }),
  part("fcu-2", "fcu", { supply: 1, load: 1 }, { fuseRatingA: 3, switched: true }),
  part("rose-1", "ceiling-rose", { feed: 2, switch: 1, lamp: 1 }),
  part("switch-1", "plate-switch", { switch: 1, feed: 1, lamp: 1 }, { switching: "one-way" }),
  part("switch-2", "plate-switch", { switch: 1, strap: 1, feed: 1, lamp: 1 }, { switching: "two-way" }),
  part("switch-3", "plate-switch", { switch: 1, strap: 1, feed: 1, lamp: 1 }, { switching: "two-way" }),
  part("lamp-1", "luminaire", { feed: 2 }),
  part("isolator-1", "isolator", { supply: 1, load: 1 }, { ratingA: 20 }),
  part("heater-1", "appliance", { feed: 1 }, { appliance: "water-heater", litres: 120 }),
];

const allEntries = (stations: readonly Station[]): CableSpec["from"][] =>
  stations.flatMap((station) => entriesOf(station).map(({ letter }) => entryId(station.id, letter)));

const sizes = fc.constantFrom(1, 1.5, 2.5, 2.5, 2.5, 4, 6, undefined);

/** One cable between two entries: whole, with a core out, with two cores crossed, or a lone lead from any to any contact. */
const anyCable = (stations: readonly Station[]): fc.Arbitrary<CableSpec> => {
  const byId = stationsById(stations);
  const entries = allEntries(stations);
  const rolesAt = new Map(
    stations.flatMap((station) =>
      entriesOf(station).map(({ letter, side }) => [
        entryId(station.id, letter),
        contactsAt(station, letter, side).map(roleOf),
      ]),
    ),
  );
  return fc
    .record({
      from: fc.constantFrom(...entries),
      to: fc.constantFrom(...entries),
      csaMm2: sizes,
      how: fc.constantFrom("whole", "whole", "whole", "core-out", "crossed", "lead"),
      pick: fc.nat(99),
      lengthM: fc.integer({ min: 1, max: 30 }),
      method: fc.constantFrom("C", "C", "100", "103", undefined),
    })
    .map(({ from, to, csaMm2, how, pick, lengthM, method }): CableSpec => {
      const straight = conductorsOf({ from, to }, byId).map((core): [Role, Role] => [
        roleOf(core.from),
        roleOf(core.to),
      ]);
      const spec: CableSpec = { from, to, lengthM };
      if (csaMm2 !== undefined) spec.csaMm2 = csaMm2;
      if (method !== undefined) spec.method = method;
      const at = pick % Math.max(1, straight.length);
      if (how === "core-out") spec.conductors = straight.filter((_, index) => index !== at);
      if (how === "crossed")
        spec.conductors = straight.map(([a], index) => [
          a,
          straight[(index + 1 + at) % straight.length]?.[1] ?? a,
        ]);
      if (how === "lead") {
        const [fromRoles, toRoles] = [rolesAt.get(from) ?? [], rolesAt.get(to) ?? []];
        const a = fromRoles[pick % fromRoles.length];
        const b = toRoles[Math.floor(pick / 7) % toRoles.length];
        spec.conductors = a && b ? [[a, b]] : [];
      }
      return spec;
    })
    .filter(
      ({ from, to, conductors }) => conductors?.length !== 0 && (from !== to || conductors !== undefined),
    );
};

/** Wirings nobody would make and some that a learner would, on the board above. */
export const anyWiring: fc.Arbitrary<Wiring> = fc
  .record({
    cables: fc.array(anyCable(board), { maxLength: 18 }),
    wants: fc.constantFrom<Wiring["wants"]>(undefined, [
      { kind: "served", stations: [stationId("socket-1"), stationId("lamp-1")] },
      { kind: "shape", of: stationId("socket-1"), shape: "ring" },
    ]),
  })
  .map(({ cables, wants }): Wiring => {
    const seen = new Set<string>();
    const once = cables.filter(({ from, to }) => {
      const key = [from, to].sort().join("~");
      return !seen.has(key) && seen.add(key);
    });
    return { version: 1, stations: board, cables: once, ...(wants ? { wants } : {}) };
  });

const anySettings: fc.Arbitrary<StationSettings> = fc.record(
  {
    deviceStandard: fc.constantFrom("BS EN 60898", "BS EN 61009", "BS 88-3", "BS 3036"),
    deviceCurve: fc.constantFrom("B", "C", "D"),
    deviceRatingA: fc.constantFrom(6, 16, 20, 30, 32, 40, 63, 7.5),
    rcdMa: fc.constantFrom(0, 30, 100),
    floorAreaM2: fc.constantFrom(40, 60, 110),
    letThroughA2s: fc.constantFrom(1000, 40_000),
    fuseRatingA: fc.constantFrom(3, 5, 13, 20),
    switched: fc.boolean(),
    gangs: fc.constantFrom(1, 2),
    switching: fc.constantFrom("one-way", "two-way", "intermediate"),
    poles: fc.constantFrom(1, 2),
    ratingA: fc.constantFrom(6, 20, 45),
    hasSocketOutlet: fc.boolean(),
    distanceToApplianceM: fc.constantFrom(0, 1, 5),
    appliance: fc.constantFrom(
      "cooker",
      "hob",
      "oven",
      "water-heater",
      "boiler",
      "shower",
      "space-heater",
      "other",
    ),
    litres: fc.constantFrom(7, 120),
    makersFuseA: fc.constantFrom(3, 5),
    inBathroom: fc.boolean(),
  },
  { requiredKeys: [] },
);

const anyReading: fc.Arbitrary<Reading> = fc.record(
  {
    test: fc.constantFrom(...testKinds),
    way: fc.constantFrom(stationId("way-1"), stationId("socket-1"), stationId("way-9")),
    red: fc.constantFrom(
      contactId("way-1.a", "L"),
      contactId("socket-1.front", "N"),
      contactId("lamp-1.a", "E"),
    ),
    black: fc.constantFrom(contactId("way-1.b", "L"), contactId("socket-2.front", "E")),
    resistanceOhm: fc.constantFrom(0, 0.4, 900),
    insulationMegohm: fc.constantFrom(0.5, 200),
    isOverRange: fc.boolean(),
    isPolarityRight: fc.boolean(),
    judged: fc.constantFrom("pass", "fail"),
  },
  { requiredKeys: ["test", "way"] },
);

/** As `anyWiring`, with any settings at any station, usual entries, loads, supply and readings, sensible or not. */
export const anyStatedWiring: fc.Arbitrary<Wiring> = fc
  .record({
    wiring: anyWiring,
    settings: fc.array(fc.option(anySettings, { nil: undefined }), {
      minLength: board.length,
      maxLength: board.length,
    }),
    powers: fc.array(fc.constantFrom(0, 0, 10, 100, 3000, 9000), {
      minLength: board.length,
      maxLength: board.length,
    }),
    hasUsualEntries: fc.boolean(),
    supply: fc.constantFrom<Wiring["supply"]>(
      undefined,
      { earthing: "TT" },
      { earthing: "TN-S", zeOhm: 0.8 },
    ),
    readings: fc.array(anyReading, { maxLength: 4 }),
  })
  .map(({ wiring, settings, powers, hasUsualEntries, supply, readings }): Wiring => ({
    ...wiring,
    ...(supply ? { supply } : {}),
    readings,
    stations: board.map(({ entries, ...station }, at) => ({
      ...station,
      ...(hasUsualEntries ? {} : { entries }),
      ...(settings[at] ? { settings: settings[at] } : { settings: {} }),
    })),
    loads: board.flatMap(({ id }, at) => {
      const powerW = powers[at] ?? 0;
      return powerW > 0 ? [{ station: id, powerW, isLongRunning: powerW > 2000 }] : [];
    }),
  }));

/** A wiring with all ids changed by `rename`, which keeps the kinds of stations and gives each a new name. */
export const renamed = (wiring: Wiring, rename: (station: string) => string): Wiring => {
  const entry = (id: CableSpec["from"]): CableSpec["from"] => {
    const [station = "", letter = ""] = id.split(".");
    return entryId(rename(station), letter);
  };
  return {
    ...wiring,
    stations: wiring.stations.map((station) => ({ ...station, id: stationId(rename(station.id)) })),
    cables: wiring.cables.map((cable) => ({ ...cable, from: entry(cable.from), to: entry(cable.to) })),
    ...(wiring.wants
      ? {
          wants: wiring.wants.map((want) => {
            if (want.kind === "served")
              return { ...want, stations: want.stations.map((id) => stationId(rename(id))) };
            return want.kind === "shape" ? { ...want, of: stationId(rename(want.of)) } : want;
          }),
        }
      : {}),
  };
};

/** All contacts of the board. */
export const boardContacts = board.flatMap((station) =>
  entriesOf(station).flatMap(({ letter, side }) => contactsAt(station, letter, side)),
);
