import { type Role } from "./ids.ts";

/** What a station can be. */
export const stationKinds = [
  "way",
  "socket-outlet",
  "junction-box",
  "fcu",
  "ceiling-rose",
  "plate-switch",
  "luminaire",
  "isolator",
  "cooker-control",
  "appliance",
] as const;
export type StationKind = (typeof stationKinds)[number];

/** What an entry is for. The side, with the kind, says which role each core of a cable lands on. */
export const sides = ["feed", "supply", "load", "switch", "lamp", "strap", "strap-in", "strap-out"] as const;
export type Side = (typeof sides)[number];

/** Cores of twin-and-earth, and the two more of three-core-and-earth. */
export const cores = ["brown", "blue", "earth", "black", "grey"] as const;
export type Core = (typeof cores)[number];

export interface CoreRole {
  core: Core;
  role: Role;
}

const twin = (brown: Role, blue: Role): CoreRole[] => [
  { core: "brown", role: brown },
  { core: "blue", role: blue },
  { core: "earth", role: "E" },
];
const straps = (brown: Role): CoreRole[] => [
  { core: "brown", role: brown },
  { core: "black", role: "strap1" },
  { core: "grey", role: "strap2" },
  { core: "earth", role: "E" },
];
const straight = twin("L", "N");

/**
 * Which role each core lands on, by kind and side of the entry. Common practice, no source: brown is line and
 * blue is neutral but in a switch cable, where both are line (blue is the switched line).
 */
export const entryLayouts: Record<StationKind, Partial<Record<Side, CoreRole[]>>> = {
  way: { feed: straight },
  "socket-outlet": { feed: straight },
  "junction-box": { feed: straight, switch: twin("L", "SL"), lamp: twin("SL", "N") },
  fcu: { supply: straight, load: straight },
  "ceiling-rose": { feed: straight, switch: twin("L", "SL"), lamp: twin("SL", "N") },
  // One-way: `switch` is a switch cable to a rose or joint box; `feed` and `lamp` serve looping at the switch.
  // Two-way: `switch` carries line and switched line on the straps, `strap` is the three-core between switches,
  // `feed` and `lamp` land the line and the lamp on the common terminal. Intermediate: two strap sides.
  "plate-switch": {
    switch: twin("L", "SL"),
    feed: straight,
    lamp: twin("SL", "N"),
    strap: straps("common"),
    "strap-in": straps("common"),
    "strap-out": straps("common"),
  },
  luminaire: { feed: straight, lamp: straight },
  isolator: { supply: straight, load: straight },
  "cooker-control": { supply: straight, load: straight },
  appliance: { feed: straight },
};

/** How a plate switch switches. */
export const switchings = ["one-way", "two-way", "intermediate"] as const;
export type Switching = (typeof switchings)[number];

/**
 * The core places of an entry, or undefined where a station of that kind has no such side. On a two-way switch
 * a two-core switch cable lands on the two straps, and a feed or lamp cable on the common terminal.
 */
export const coreRoles = (
  stationKind: StationKind,
  side: Side,
  switching: Switching = "one-way",
): CoreRole[] | undefined => {
  if (stationKind === "plate-switch" && switching === "two-way") {
    if (side === "switch") return twin("strap1", "strap2");
    if (side === "feed" || side === "lamp") return twin("common", "N");
  }
  return entryLayouts[stationKind][side];
};

/** Kinds whose supply and load sides are apart inside: fuse, switch or contacts lie between them. */
export const isTwoSided = (stationKind: StationKind): boolean =>
  stationKind === "fcu" || stationKind === "isolator" || stationKind === "cooker-control";

/**
 * The bus a contact lies on inside its station: all contacts of a role are one node, but in a two-sided station
 * live and neutral are a node a side, and in an intermediate switch the straps are (earth and common are one).
 */
export const busName = (stationKind: StationKind, side: Side, role: Role): string => {
  if (isTwoSided(stationKind) && role !== "E") return `${side}.${role}`;
  if ((side === "strap-in" || side === "strap-out") && (role === "strap1" || role === "strap2"))
    return `${side}.${role}`;
  return role;
};

/** Appliances with a rule of their own, and the rest. */
export const applianceKinds = [
  "cooker",
  "hob",
  "oven",
  "water-heater",
  "boiler",
  "shower",
  "storage-heater",
  "space-heater",
  "extractor-fan",
  "other",
] as const;
export type ApplianceKind = (typeof applianceKinds)[number];

/** A point is an accessory that current is taken from; a junction box or an isolator is not. */
export const isPoint = (stationKind: StationKind): boolean =>
  stationKind === "socket-outlet" ||
  stationKind === "fcu" ||
  stationKind === "appliance" ||
  stationKind === "luminaire" ||
  stationKind === "ceiling-rose";

/** The entries a station has where a wiring file does not list them: letter and side. */
export const usualEntries: Record<StationKind, { letter: string; side: Side }[]> = {
  way: feeds("abcdef"),
  "socket-outlet": feeds("abcdef"),
  "junction-box": [
    ...feeds("abcdef"),
    { letter: "s", side: "switch" },
    { letter: "t", side: "lamp" },
    { letter: "u", side: "lamp" },
  ],
  fcu: twoSided(),
  "ceiling-rose": [...feeds("abc"), { letter: "s", side: "switch" }, { letter: "t", side: "lamp" }],
  "plate-switch": [
    { letter: "s", side: "switch" },
    { letter: "a", side: "feed" },
    { letter: "b", side: "feed" },
    { letter: "t", side: "lamp" },
    { letter: "u", side: "strap" },
    { letter: "v", side: "strap-in" },
    { letter: "w", side: "strap-out" },
  ],
  luminaire: feeds("abc"),
  isolator: twoSided(),
  "cooker-control": twoSided(),
  appliance: feeds("a"),
};

function feeds(letters: string): { letter: string; side: Side }[] {
  return [...letters].map((letter) => ({ letter, side: "feed" }));
}

function twoSided(): { letter: string; side: Side }[] {
  return [
    { letter: "a", side: "supply" },
    { letter: "b", side: "supply" },
    { letter: "c", side: "load" },
    { letter: "d", side: "load" },
  ];
}
