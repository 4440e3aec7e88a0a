import { byId, type StationId } from "../../board/ids.ts";
import type { Built, Scenario } from "../scenario.schema.ts";
import type { Draft, WrongDraft } from "./draft.ts";
import type { Draw } from "./draw.ts";
import type { ExerciseLevel } from "./exercise-words.ts";
import {
  cable,
  type ExerciseStation,
  heavyLoad,
  idOf,
  lightLoad,
  socketOutlets,
  station,
  unit,
  way,
  wayOf,
  allSockets,
  sockets,
} from "./exercise-stations.ts";

const ringMm2 = 2.5;
const sizesMm2 = [1.5, ringMm2] as const;
const fusesA = [3, 5, 13] as const;
/** What the maker of a boiler allows, in an invented leaflet. */
const boilerFuseA = 3;
const boiler = station("boiler-1");

/** What is fed through the unit: one socket outlet, two, or a boiler with a fuse of its own. */
export function fusedExercise(level: ExerciseLevel, draw: Draw): Draft {
  const fedCount = level === 2 ? 2 : level === 1 ? 1 : 0;
  const chosen = draw.some(sockets, 2 + fedCount);
  const [inRing, fedSockets] = [chosen.slice(0, 2), chosen.slice(2)];
  const [first = way, second = way] = inRing;
  const ring = [
    cable(`${way}.a`, `${first}.a`, ringMm2),
    cable(`${first}.b`, `${second}.a`, ringMm2),
    cable(`${second}.b`, `${way}.b`, ringMm2),
  ];
  const fed = level === 3 ? [boiler] : fedSockets;
  const served = [...inRing, ...fed];
  const isFuseChosen = level > 1;
  const answers = (isFuseChosen ? fusesA : [13]).flatMap((fuseRatingA) =>
    sizesMm2.map((csaMm2): Built => ({
      ...(isFuseChosen
        ? { settings: { [unit]: { fuseRatingA, ...(level === 3 ? { switched: true } : {}) } } }
        : {}),
      cables: [...ring, cable(`${second}.c`, `${unit}.a`, ringMm2), ...behind(fed, csaMm2)],
    })),
  );
  const [answer, ...more] = answers;
  return {
    supply: { earthing: "TN-C-S", zeOhm: 0.35 },
    stations: [
      wayOf(32),
      ...socketOutlets(draw, [[first, 3], [second, 3], ...fedSockets.map((id) => [id, 2] as const)]),
      unitOf(level),
      ...(level === 3 ? [boilerStation] : []),
    ],
    loads: loadsOf(level, draw, inRing, fedSockets),
    parts: { cableCsaMm2: [...sizesMm2], ...(isFuseChosen ? { fuseRatingA: [...fusesA] } : {}) },
    requirements: [
      { kind: "served", stations: served },
      { kind: "one-circuit", stations: served, way },
      { kind: "shape", of: way, shape: "ring" },
      { kind: "through-fcu", stations: fed, fcu: unit },
      ...(level === 2 ? [{ kind: "sized" as const, way }] : []),
      ...(level === 3
        ? [
            { kind: "fuse" as const, stations: fed, mostA: boilerFuseA },
            { kind: "own-switch" as const, stations: fed },
          ]
        : []),
      { kind: "kept", cables: ring.map(idOf).toSorted(byId) },
    ],
    asFound: { cables: ring },
    answers: answer ? [answer, ...more] : [{ cables: ring }],
    needs: allSockets,
    isOfLevel: ({ settings }) => level !== 2 || settings?.[unit]?.fuseRatingA === 13,
    wrongs: (right) => wrongs(right, { level, inRing, fed }),
    opening: draw.from([
      { en: "The ring of this house is sound.", pl: "Pierścień w tym domu jest sprawny." },
      { en: "The ring stays. Something new comes to it.", pl: "Pierścień zostaje. Przybywa coś nowego." },
    ]),
    outer: inRing,
    inner: [unit, ...fed],
    routeClass: draw.from([{ method: "C" }, { method: "100" }]),
  };
}

const unitOf = (level: ExerciseLevel): ExerciseStation => ({
  id: unit,
  kind: "fcu",
  entries: { supply: 2, load: 2 },
  ...(level === 1 ? { settings: { fuseRatingA: 13, switched: true } } : {}),
  ...(level === 2 ? { settings: { switched: true }, chosen: ["fuseRatingA" as const] } : {}),
  ...(level === 3 ? { chosen: ["fuseRatingA" as const, "switched" as const] } : {}),
});
const boilerStation: ExerciseStation = {
  id: boiler,
  kind: "appliance",
  entries: { feed: 1 },
  settings: { appliance: "boiler", makersFuseA: boilerFuseA },
};

function loadsOf(
  level: ExerciseLevel,
  draw: Draw,
  inRing: readonly StationId[],
  fed: readonly StationId[],
): Scenario["loads"] {
  const [first, second] = inRing;
  return [
    ...(first ? [heavyLoad(draw, first, 2000)] : []),
    ...(second ? [lightLoad(draw, second)] : []),
    // One fuse for all of it: never more than 13 A together.
    ...fed.map((id, at) => (at === 0 ? heavyLoad(draw, id, level === 2 ? 1800 : 2800) : lightLoad(draw, id))),
    ...(level === 3
      ? [{ station: boiler, powerW: 130, isLongRunning: true, name: { en: "boiler", pl: "kocioł" } }]
      : []),
  ];
}

/** From the load side of the unit to each in their order. */
const behind = (fed: readonly StationId[], csaMm2: number) =>
  fed.map((id, at) => cable(at === 0 ? `${unit}.c` : `${fed[at - 1]}.b`, `${id}.a`, csaMm2));

function wrongs(
  answer: Built,
  { level, inRing, fed }: { level: ExerciseLevel; inRing: readonly StationId[]; fed: readonly StationId[] },
): WrongDraft[] {
  const [first = way, second = way] = inRing;
  const ring = answer.cables.slice(0, 3);
  const [feeder] = answer.cables.slice(3, 4);
  const after = answer.cables.slice(4);
  const csaMm2 = after[0]?.csaMm2 ?? ringMm2;
  const settings = answer.settings ? { settings: answer.settings } : {};
  const fuseA = answer.settings?.[unit]?.fuseRatingA;
  const withUnit = (changed: NonNullable<Built["settings"]>[string]): Built => ({
    ...answer,
    settings: { [unit]: { ...answer.settings?.[unit], ...changed } },
  });
  const weaker = fusesA.findLast((one) => fuseA !== undefined && one < fuseA);
  return [
    {
      name: "the unit is fed from its load side",
      built: {
        ...settings,
        cables: [
          ...ring,
          cable(`${second}.c`, `${unit}.c`, ringMm2),
          ...after.map((one, at) => (at === 0 ? cable(`${unit}.a`, one.to, csaMm2) : one)),
        ],
      },
      breaks: ["wrong-side"],
    },
    ...(level === 2 && weaker !== undefined
      ? [
          {
            name: "a fuse too small for the load",
            built: withUnit({ fuseRatingA: weaker }),
            breaks: ["fused-load"] as const,
          },
        ]
      : []),
    ...(level === 3
      ? [
          {
            name: "a fuse larger than its maker allows",
            built: withUnit({ fuseRatingA: 13 }),
            breaks: ["fuse-size"] as const,
          },
          {
            name: "the unit has no switch",
            built: withUnit({ switched: false }),
            breaks: ["isolation"] as const,
          },
        ]
      : []),
    {
      name: "the cable to the unit is too small",
      built: {
        ...answer,
        cables: answer.cables.map((one) => (one === feeder ? { ...one, csaMm2: 1.5 } : one)),
      },
      breaks: ["spur-cable", "volt-drop"],
    },
    level === 3
      ? {
          name: "a cable that was to stay is taken out",
          built: {
            ...settings,
            cables: [
              cable(`${way}.a`, `${unit}.a`, ringMm2),
              cable(`${unit}.b`, `${first}.a`, ringMm2),
              ...ring.slice(1),
              ...after,
            ],
          },
          breaks: [],
        }
      : {
          name: "each hangs on the ring without a fuse",
          built: {
            ...settings,
            cables: [...ring, ...fed.map((id, at) => cable(`${[second, first][at]}.c`, `${id}.a`, ringMm2))],
          },
          breaks: [],
        },
  ];
}
