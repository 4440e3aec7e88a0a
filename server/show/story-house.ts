import type { StationId } from "../../shared/board/ids.ts";
import { routes } from "../../shared/scenario/plan-route.ts";
import type { Plan, Scenario } from "../../shared/scenario/scenario.schema.ts";
import { strip } from "../../shared/scenario/strip.ts";
import type { ScenarioKit } from "../library.ts";

type Load = Scenario["loads"][number];
type StoryStation = Scenario["stations"][number];

const id = (text: string): StationId => text as StationId;
const socket = (number: number): StoryStation => ({
  id: id(`socket-${number}`),
  kind: "socket-outlet",
  entries: { feed: 2 },
  settings: { gangs: 2 },
});
const wayWith = (deviceRatingA: number): StoryStation => ({
  id: id("way-1"),
  kind: "way",
  entries: { feed: 2 },
  settings: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA, rcdMa: 30 },
});
const unit: StoryStation = {
  id: id("fcu-1"),
  kind: "fcu",
  entries: { supply: 1, load: 1 },
  settings: { fuseRatingA: 13 },
};
const sockets = [1, 2, 3, 4].map(socket);

/** Of an invented house: a cottage of two rooms, drawn wide so that it is large on a panel that lies. */
const plan: Plan = {
  width: 120,
  height: 64,
  rooms: [
    { name: { en: "Kitchen", pl: "Kuchnia" }, x: 0, y: 0, width: 58, height: 64 },
    { name: { en: "Living room", pl: "Salon" }, x: 58, y: 0, width: 62, height: 64 },
  ],
  routeClasses: { floor: { method: "C" }, wall: { method: "C", depthMm: 15 } },
  walls: [
    ...[
      [0, 0, 120, 0],
      [120, 0, 120, 64],
      [120, 64, 0, 64],
      [0, 64, 0, 0],
      [58, 0, 58, 20],
      [58, 44, 58, 64],
    ].map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => ({
      from: { x: x1, y: y1 },
      to: { x: x2, y: y2 },
      routeClass: "wall",
    })),
    ...[
      [14, 54, 14, 10],
      [14, 10, 108, 10],
      // The second socket outlet lies below the corner, so that the way back is the other side of the house.
      [108, 10, 108, 54],
      [108, 54, 14, 54],
      [36, 10, 36, 32],
      [36, 32, 84, 32],
    ].map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => ({
      from: { x: x1, y: y1 },
      to: { x: x2, y: y2 },
      routeClass: "floor",
      as: "floor" as const,
    })),
  ],
  places: [
    { station: id("way-1"), at: { x: 14, y: 54 } },
    { station: id("socket-1"), at: { x: 36, y: 10 } },
    { station: id("socket-2"), at: { x: 108, y: 14 } },
    { station: id("fcu-1"), at: { x: 40, y: 32 } },
    { station: id("socket-3"), at: { x: 62, y: 32 } },
    { station: id("socket-4"), at: { x: 84, y: 32 } },
  ],
};

/** What stands in the house in one of its pictures. */
export interface StoryHouse {
  deviceRatingA: number;
  socketCount: number;
  hasUnit?: true;
  loads: readonly Load[];
}

/** A house of the story as the rules core and the plan take it. It asks for nothing: only what is wired is judged. */
export function storyKit(
  { deviceRatingA, socketCount, hasUnit, loads }: StoryHouse,
  name: string,
): ScenarioKit {
  const stations = [wayWith(deviceRatingA), ...sockets.slice(0, socketCount), ...(hasUnit ? [unit] : [])];
  const isThere = new Set<string>(stations.map((station) => station.id));
  const own = { ...plan, places: plan.places.filter(({ station }) => isThere.has(station)) };
  const empty = { en: "", pl: "" };
  const scenario: Scenario = {
    version: 1,
    id: name,
    revision: 1,
    title: empty,
    place: empty,
    level: 1,
    teaches: empty,
    task: empty,
    isExistingCircuit: false,
    supply: { earthing: "TN-C-S", zeOhm: 0.35 },
    stations,
    plan: own,
    loads: [...loads],
    parts: { cableCsaMm2: [2.5, 4] },
    requirements: [],
    asFound: { cables: [] },
    modelAnswers: [],
    wrongAnswers: [],
  };
  return { scenario, stripped: strip(scenario), bytes: new Uint8Array(), routeBetween: routes(own) };
}
