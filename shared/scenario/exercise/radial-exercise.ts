import type { StationId } from "../../board/ids.ts";
import type { CableSpec } from "../../wiring/wiring.schema.ts";
import type { Built, Scenario } from "../scenario.schema.ts";
import type { Draft, WrongDraft } from "./draft.ts";
import type { Draw } from "./draw.ts";
import type { ExerciseLevel } from "./exercise-words.ts";
import {
  cable,
  heavyLoad,
  lightLoad,
  socketOutlets,
  way,
  wayOf,
  allSockets,
  sockets,
} from "./exercise-stations.ts";

const sizesMm2 = [1.5, 2.5, 4, 6] as const;
const ratingsA = [16, 20, 32] as const;

interface Kind {
  outletCount: number;
  /** What its device has to be, and the size of its cable: one that a size less would not do for. */
  deviceRatingA: number;
  csaMm2: number;
  /** How the cables of the house run, so that this is the size. */
  routeClasses: readonly [Draft["routeClass"], ...Draft["routeClass"][]];
}
const kinds: Record<ExerciseLevel, Kind> = {
  1: { outletCount: 2, deviceRatingA: 20, csaMm2: 2.5, routeClasses: [{ method: "100" }, { method: "102" }] },
  2: { outletCount: 3, deviceRatingA: 20, csaMm2: 2.5, routeClasses: [{ method: "100" }, { method: "102" }] },
  3: {
    outletCount: 4,
    deviceRatingA: 20,
    csaMm2: 4,
    routeClasses: [{ method: "101" }, { method: "C", groupedCircuits: 3 }, { method: "100", ambientC: 45 }],
  },
};

/** A radial of two or more socket outlets, built from nothing; from level 2 its device is chosen for the loads. */
export function radialExercise(level: ExerciseLevel, draw: Draw): Draft {
  const { outletCount, deviceRatingA: rightA, csaMm2: rightMm2, routeClasses } = kinds[level];
  const chosen = level === 3 ? draw.some(sockets, outletCount) : sockets.slice(0, outletCount);
  const heaviest = draw.some(chosen, level === 1 ? 1 : 2);
  const isChosen = level > 1;
  const ratings = isChosen ? ratingsA : [rightA];
  const answers = ratings.flatMap((deviceRatingA) =>
    sizesMm2.map((csaMm2): Built => ({
      ...(isChosen ? { settings: { [way]: { deviceRatingA } } } : {}),
      cables: chain(chosen, csaMm2),
    })),
  );
  const [first, ...more] = answers;
  const loads: Scenario["loads"] = chosen.map((id) =>
    heaviest.includes(id) ? heavyLoad(draw, id, 2200) : lightLoad(draw, id),
  );
  return {
    supply: draw.from([
      { earthing: "TN-C-S", zeOhm: 0.35 },
      { earthing: "TN-S", zeOhm: 0.6 },
    ]),
    stations: [
      wayOf(isChosen ? undefined : rightA),
      ...socketOutlets(
        draw,
        chosen.map((id, at) => [id, at === 0 ? 3 : level > 1 && at === outletCount - 1 ? 1 : 2] as const),
      ),
    ],
    loads,
    parts: { cableCsaMm2: [...sizesMm2], ...(isChosen ? { deviceRatingA: [...ratingsA] } : {}) },
    requirements: [
      { kind: "served", stations: chosen },
      { kind: "one-circuit", stations: chosen, way },
      { kind: "shape", of: way, shape: "radial" },
      { kind: "sized", way },
    ],
    asFound: { cables: [] },
    answers: first ? [first, ...more] : [{ cables: [] }],
    ...(level === 3 ? { needs: allSockets } : {}),
    isOfLevel: ({ settings, cables: [first] }) =>
      first?.csaMm2 === rightMm2 && (settings?.[way]?.deviceRatingA ?? rightA) === rightA,
    wrongs: (answer) => wrongs(answer, chosen, isChosen),
    opening: draw.from([
      { en: "One room is made ready for work.", pl: "Jeden pokój staje się pracownią." },
      { en: "A few things run at the same time here.", pl: "Kilka rzeczy pracuje tu jednocześnie." },
      { en: "The way is free for a circuit of its own.", pl: "Pole jest wolne na osobny obwód." },
    ]),
    outer: level === 3 ? [chosen[0] ?? way, chosen[3] ?? way] : chosen,
    inner: level === 3 ? chosen.slice(1, 3) : [],
    routeClass: draw.from(routeClasses),
  };
}

/** From the way to each of some stations in their order. */
function chain(ids: readonly StationId[], csaMm2: number): CableSpec[] {
  return ids.map((id, at) => cable(at === 0 ? `${way}.a` : `${ids[at - 1]}.b`, `${id}.a`, csaMm2));
}

function wrongs(answer: Built, ids: readonly StationId[], isChosen: boolean): WrongDraft[] {
  const csaMm2 = answer.cables[0]?.csaMm2 ?? 0;
  const ratingA = answer.settings?.[way]?.deviceRatingA;
  const settings = answer.settings ? { settings: answer.settings } : {};
  const [smaller] = sizesMm2.filter((size) => size < csaMm2).toReversed();
  const withDevice = (deviceRatingA: number): Built => ({
    ...answer,
    settings: { [way]: { deviceRatingA } },
  });
  const larger = ratingsA.find((one) => ratingA !== undefined && one > ratingA);
  const weaker = ratingsA.findLast((one) => ratingA !== undefined && one < ratingA);
  const straight = { L: ["L", "L"], N: ["N", "N"] } as const;
  const back: Built = {
    ...settings,
    cables: [
      ...chain(ids.slice(0, 2), csaMm2),
      cable(`${ids[1]}.b`, `${way}.b`, csaMm2),
      ...ids.slice(2, 3).map((id) => cable(`${ids[0]}.c`, `${id}.a`, csaMm2)),
      ...ids.slice(3).map((id) => cable(`${ids[1]}.c`, `${id}.a`, csaMm2)),
    ],
  };
  return [
    ...(smaller === undefined
      ? []
      : [
          {
            name: "a cable too small for the device",
            built: { ...settings, cables: chain(ids, smaller) },
            breaks: ["radial-cable", "device-cable", "volt-drop", "fault-loop"] as const,
          },
        ]),
    ...(isChosen && larger !== undefined
      ? [
          {
            name: "a device too big for the cable",
            built: withDevice(larger),
            breaks: ["radial-cable", "device-cable", "volt-drop", "fault-loop"] as const,
          },
        ]
      : []),
    ...(isChosen && weaker !== undefined
      ? [
          {
            name: "a device too small for the load",
            built: withDevice(weaker),
            breaks: ["design-current"] as const,
          },
        ]
      : []),
    {
      name: "the earth of the last point is left out",
      built: {
        ...answer,
        cables: answer.cables.map((one, at) =>
          at === ids.length - 1 ? { ...one, conductors: [[...straight.L], [...straight.N]] } : one,
        ),
      },
      breaks: ["cpc-missing"],
    },
    { name: "it is built as a ring", built: back, breaks: [] },
  ];
}
