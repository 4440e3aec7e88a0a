import type { EntryId, StationId } from "../../shared/board/ids.ts";
import type { SceneName } from "../../shared/protocol/show-view.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import type { StoryHouse } from "./story-house.ts";

/** One picture of the story: a house, what is wired in it, and what is said of it. */
export interface StoryPicture {
  house: StoryHouse;
  cables: readonly CableSpec[];
  /** Of the sentences of its scene, from 1. */
  line: number;
  /** How long it stands; one where left out. */
  beats?: number;
  /** It is finished: the rules core says whether it is right. */
  isJudged?: true;
  /** The currents that stand beside it: of the two legs of the ring, or of the cable named. */
  currents?: "legs" | { cable: string; upTo: "Ib" | "In" | "Iz" };
}

export interface Scene {
  name: SceneName;
  pictures: readonly StoryPicture[];
}

const cable = (from: string, to: string, csaMm2 = 2.5): CableSpec => ({
  from: from as EntryId,
  to: to as EntryId,
  csaMm2,
});
const load = (station: string, powerW: number): Scenario["loads"][number] => ({
  station: station as StationId,
  powerW,
});

const ring = [
  cable("way-1.a", "socket-1.a"),
  cable("socket-1.b", "socket-2.a"),
  cable("socket-2.b", "way-1.b"),
];
/** Of our own choice: a full kettle, about as much as one plug may take. */
const kettleW = 3000;
const ringHouse = (socketCount: number): StoryHouse => ({ deviceRatingA: 32, socketCount, loads: [] });
const withKettle = (station: string): StoryHouse => ({ ...ringHouse(2), loads: [load(station, kettleW)] });

const spur = cable("socket-1.c", "socket-3.a");
const second = cable("socket-3.b", "socket-4.a");

const oneCable = "socket-1.a~way-1.a";
const radial: StoryHouse = {
  deviceRatingA: 32,
  socketCount: 2,
  loads: [load("socket-1", kettleW), load("socket-2", kettleW)],
};
const radialOf = (csaMm2: number) => [
  cable("way-1.a", "socket-1.a", csaMm2),
  cable("socket-1.b", "socket-2.a", csaMm2),
];
const fused = [...ring, cable("socket-1.c", "fcu-1.a"), cable("fcu-1.c", "socket-3.a"), second];
const fusedHouse: StoryHouse = { ...ringHouse(4), hasUnit: true };

/** So many cables of a wiring, one more from picture to picture. */
const growing = (house: StoryHouse, cables: readonly CableSpec[], line: number): StoryPicture[] =>
  cables.map((_, at) => ({ house, cables: cables.slice(0, at + 1), line }));

/**
 * The story of the show, one idea a scene. It says what is wired and what is looked at; whether that is right, and every
 * number, comes from the rules core and the network of the wiring.
 */
export const story: readonly Scene[] = [
  {
    name: "ring",
    pictures: [
      ...growing(ringHouse(2), ring, 1),
      { house: ringHouse(2), cables: ring, line: 2, isJudged: true },
    ],
  },
  {
    name: "shares",
    pictures: [
      { house: withKettle("socket-1"), cables: ring, line: 1, beats: 2, currents: "legs" },
      { house: withKettle("socket-2"), cables: ring, line: 2, beats: 2, currents: "legs" },
    ],
  },
  {
    name: "spur",
    pictures: [
      { house: ringHouse(3), cables: ring, line: 1 },
      { house: ringHouse(3), cables: [...ring, spur], line: 1 },
      { house: ringHouse(3), cables: [...ring, spur], line: 2, beats: 2, isJudged: true },
    ],
  },
  {
    name: "second-spur",
    pictures: [
      { house: ringHouse(4), cables: [...ring, spur], line: 1 },
      { house: ringHouse(4), cables: [...ring, spur, second], line: 1 },
      { house: ringHouse(4), cables: [...ring, spur, second], line: 2, beats: 2, isJudged: true },
    ],
  },
  {
    name: "fuse",
    pictures: [
      { house: fusedHouse, cables: fused.slice(0, 4), line: 1 },
      { house: fusedHouse, cables: fused, line: 1 },
      { house: fusedHouse, cables: fused, line: 2, beats: 2, isJudged: true },
    ],
  },
  {
    name: "protect",
    pictures: [
      { house: radial, cables: radialOf(2.5), line: 1, currents: { cable: oneCable, upTo: "In" } },
      {
        house: radial,
        cables: radialOf(2.5),
        line: 2,
        beats: 1.5,
        currents: { cable: oneCable, upTo: "Iz" },
        isJudged: true,
      },
      {
        house: radial,
        cables: radialOf(4),
        line: 3,
        beats: 1.5,
        currents: { cable: oneCable, upTo: "Iz" },
        isJudged: true,
      },
    ],
  },
];
