import type { StationId } from "../../board/ids.ts";
import type { CableSpec } from "../../wiring/wiring.schema.ts";
import type { Built } from "../scenario.schema.ts";
import type { Draft, WrongDraft } from "./draft.ts";
import type { Draw } from "./draw.ts";
import type { ExerciseLevel } from "./exercise-words.ts";
import {
  cable,
  heavyLoad,
  idOf,
  lightLoad,
  socketOutlets,
  way,
  wayOf,
  allSockets,
  sockets,
} from "./exercise-stations.ts";

const csaMm2 = 2.5;

/** So many socket outlets in the ring, and so many on a spur of their own. */
const counts: Record<ExerciseLevel, { ring: number; spurs: number }> = {
  1: { ring: 2, spurs: 0 },
  2: { ring: 2, spurs: 1 },
  3: { ring: 3, spurs: 2 },
};

/** A ring and its spurs, built from nothing. Level 3 wants a larger board than the first two. */
export function ringExercise(level: ExerciseLevel, draw: Draw): Draft {
  const { ring: ringCount, spurs: spurCount } = counts[level];
  const chosen =
    level === 3 ? draw.some(sockets, ringCount + spurCount) : sockets.slice(0, ringCount + spurCount);
  const [inRing, onSpurs] = [chosen.slice(0, ringCount), chosen.slice(ringCount)];
  const [heaviest] = draw.some(inRing, 1);
  return {
    supply: { earthing: "TN-C-S", zeOhm: 0.35 },
    stations: [
      wayOf(32),
      ...socketOutlets(draw, [
        ...inRing.map((id, at) => [id, at < Math.max(1, spurCount) ? 3 : 2] as const),
        ...onSpurs.map((id) => [id, level === 3 ? 2 : 1] as const),
      ]),
    ],
    loads: chosen.map((id) => (id === heaviest ? heavyLoad(draw, id) : lightLoad(draw, id))),
    parts: { cableCsaMm2: [1.5, csaMm2] },
    requirements: [
      { kind: "served", stations: chosen },
      { kind: "one-circuit", stations: chosen, way },
      { kind: "shape", of: way, shape: "ring" },
      { kind: "in-ring", stations: inRing },
      ...(onSpurs.length > 0 ? [{ kind: "unfused-spur" as const, stations: onSpurs }] : []),
    ],
    asFound: { cables: [] },
    answers: [wired(inRing, onSpurs)],
    ...(level === 3 ? { needs: allSockets } : {}),
    isOfLevel: () => true,
    wrongs: (answer) => wrongs(answer, inRing, onSpurs),
    opening: draw.from([
      { en: "The house gets a new circuit.", pl: "Dom dostaje nowy obwód." },
      {
        en: "The old circuit is gone. A new one takes its place.",
        pl: "Stary obwód usunięto. Powstaje nowy.",
      },
      { en: "The rooms are being let again.", pl: "Pokoje będą znów wynajęte." },
    ]),
    outer: inRing,
    inner: onSpurs,
    routeClass: { method: "C" },
  };
}

/** A ring through some stations in their order, and a spur from each of the first of them. */
function wired(inRing: readonly StationId[], onSpurs: readonly StationId[]): Built {
  const ends = [...inRing.flatMap((id) => [`${id}.a`, `${id}.b`])];
  const stops = [`${way}.a`, ...ends, `${way}.b`];
  const legs = stops.flatMap((from, at): CableSpec[] => {
    const to = stops[at + 1];
    return at % 2 === 0 && to !== undefined ? [cable(from, to, csaMm2)] : [];
  });
  return {
    cables: [...legs, ...onSpurs.map((id, at) => cable(`${inRing[at]}.c`, `${id}.a`, csaMm2))],
  };
}

function wrongs(answer: Built, inRing: readonly StationId[], onSpurs: readonly StationId[]): WrongDraft[] {
  const legs = answer.cables.slice(0, inRing.length + 1);
  const [last, second] = [legs.at(-1), legs[1]];
  const thin = (one: CableSpec | undefined): Built => ({
    cables: answer.cables.map((leg) => (leg === one ? { ...leg, csaMm2: 1.5 } : leg)),
  });
  const [spur] = answer.cables.slice(legs.length);
  const [first = way, next = way] = inRing;
  return [
    {
      name: "the ring does not come back",
      built: { cables: answer.cables.filter((leg) => leg !== last) },
      breaks: ["ring-open", "volt-drop"],
    },
    {
      name: "the ring comes back without its earth",
      built: {
        cables: answer.cables.map((leg) =>
          last && idOf(leg) === idOf(last)
            ? {
                ...leg,
                conductors: [
                  ["L", "L"],
                  ["N", "N"],
                ],
              }
            : leg,
        ),
      },
      breaks: ["ring-open", "volt-drop"],
    },
    { name: "one leg of the ring is too small", built: thin(second), breaks: ["ring-cable", "volt-drop"] },
    ...(spur
      ? [{ name: "a spur is too small", built: thin(spur), breaks: ["spur-cable", "volt-drop"] as const }]
      : []),
    onSpurs.length === 0
      ? {
          name: "the second socket outlet is on a spur",
          built: {
            cables: [
              cable(`${way}.a`, `${first}.a`, csaMm2),
              cable(`${first}.b`, `${way}.b`, csaMm2),
              cable(`${first}.c`, `${next}.a`, csaMm2),
            ],
          },
          breaks: [],
        }
      : {
          name: "every point is in the ring",
          built: wired([...inRing, ...onSpurs], []),
          breaks: [],
        },
  ];
}
