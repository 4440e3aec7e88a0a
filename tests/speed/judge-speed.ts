import { makeBoards } from "../../hardware/boards/make-boards.ts";
import { entryId, type EntryId, stationId } from "../../shared/board/ids.ts";
import { judge } from "../../shared/rules/judge.ts";
import type { CableSpec, Station, Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../shared/board/station-settings.schema.ts";
import { shuffled } from "../hardware/scan/random-copper.ts";
import { seeded } from "../seeded.ts";
import { ms, quantile, type SpeedLine, timedMs } from "./speed-line.ts";

const usualSettings: Partial<Record<Station["kind"], StationSettings>> = {
  way: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32, rcdMa: 30 },
  fcu: { fuseRatingA: 13, switched: true },
  isolator: { ratingA: 50, poles: 2 },
  "cooker-control": { ratingA: 45, distanceToApplianceM: 1 },
  "junction-box": { ratingA: 32 },
  "plate-switch": { ratingA: 10 },
};

const cable = (from: EntryId, to: EntryId, lengthM: number): CableSpec => ({
  from,
  to,
  csaMm2: 2.5,
  lengthM,
});

/** The workshop board with a cable at every entry, put in at random: mostly nonsense, all of it judged. */
export const fullBoard = (random: () => number): Wiring => {
  const board = makeBoards()["workshop"];
  if (!board) throw new Error("there is no workshop board");
  const stations = board.stations.map((station): Station => ({
    id: station.id,
    kind: station.kind,
    entries: station.entries.map(({ letter, side }) => ({ letter, side })),
    settings: { ...usualSettings[station.kind], ...station.settings },
  }));
  const entries = board.stations.flatMap(({ id, entries }) =>
    entries.map(({ letter }) => entryId(id, letter)),
  );
  const order = shuffled(entries.length, random).map((index) => entries[index] as EntryId);
  const cables = order.flatMap((from, index) => {
    const to = order[index + 1];
    return index % 2 === 0 && to !== undefined ? [cable(from, to, 1 + 12 * random())] : [];
  });
  const loads = board.stations
    .filter(({ kind }) => kind === "appliance" || kind === "luminaire" || kind === "ceiling-rose")
    .map(({ id, kind }) => ({ station: id, powerW: kind === "appliance" ? 2000 : 60 }));
  return { version: 1, stations, cables, loads };
};

/** Rings of ten twin socket outlets, each with a spur, a way each: `cableCount` cables or a few more. */
const manyRings = (cableCount: number, random: () => number): Wiring => {
  const wiring: Wiring = { version: 1, stations: [], cables: [] };
  const pointCount = 10;
  const cablesOfRing = 2 * pointCount + 1;
  for (let ring = 0; wiring.cables.length < cableCount; ring += 1) {
    const way = stationId(`way-${ring}`);
    wiring.stations.push({ id: way, kind: "way", settings: { ...usualSettings.way } });
    const point = (kind: string, index: number) => stationId(`${kind}-${ring}-${index}`);
    for (let index = 0; index < pointCount; index += 1)
      for (const kind of ["socket", "spur"])
        wiring.stations.push({ id: point(kind, index), kind: "socket-outlet", settings: { gangs: 2 } });
    const round = [way, ...Array.from({ length: pointCount }, (_, index) => point("socket", index)), way];
    round.slice(1).forEach((to, index) => {
      const from = round[index] as typeof to;
      wiring.cables.push(
        cable(entryId(from, from === way ? "a" : "b"), entryId(to, to === way ? "b" : "a"), 2 + random()),
      );
    });
    for (let index = 0; index < pointCount; index += 1)
      wiring.cables.push(
        cable(entryId(point("socket", index), "c"), entryId(point("spur", index), "a"), 2 + random()),
      );
  }
  if (wiring.cables.length > cableCount + cablesOfRing) throw new Error("more cables than asked for");
  return wiring;
};

const turns = 200;
/** A bench judges all day: what is measured is the compiled code. */
const warmTurns = 1500;

/** Each board counts by the best of so many turns: what else the machine did meanwhile is not the judge's. */
const bestOf = 5;
const bestMs = (wiring: Wiring): number =>
  Math.min(...Array.from({ length: bestOf }, () => timedMs(() => judge(wiring))));

/** Judging, every rule included, on the workshop board and as wirings grow. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const random = seeded(seed);
  for (let turn = 0; turn < warmTurns; turn += 1) judge(fullBoard(random));
  const boards = Array.from({ length: turns }, () => fullBoard(random));
  const median = quantile(boards.map(bestMs), 0.5);
  const growing = (cableCount: number, count: number): number => {
    const wirings = Array.from({ length: count }, () => manyRings(cableCount, random));
    return quantile(wirings.map(bestMs), 0.5);
  };
  const growth = growing(2000, 5) / growing(60, turns);
  return [
    {
      what: "judge the full workshop board: median",
      reached: ms(median),
      target: "under 1 ms",
      ok: median < 1,
    },
    {
      what: "judge 2,000 cables against 60",
      reached: `${growth.toFixed(0)} x`,
      target: "at most 60 x",
      ok: growth <= 60,
    },
  ];
};
