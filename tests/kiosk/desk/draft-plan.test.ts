import { describe, expect, it } from "vitest";
import {
  areaBetween,
  nearestWall,
  withoutRoom,
  withoutRun,
  withPlace,
  withRoom,
  withRouteClass,
  withRun,
} from "../../../kiosk/desk/author/draft-plan.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { none } from "./empty-draft.ts";

const same = (text: string) => ({ en: text, pl: text });
const room = (draft: Scenario, x: number, y: number, width: number, height: number) =>
  withRoom(draft, { x, y, width, height }, same("room"), "wall");
const walls = ({ plan }: Scenario) =>
  plan.walls.map(({ from, to }) => `${from.x},${from.y} ${to.x},${to.y}`).toSorted();
const lengthOf = ({ plan }: Scenario) =>
  plan.walls.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

describe("rooms drawn on the grid", () => {
  it("have four walls, however they are dragged", () => {
    expect(areaBetween({ x: 30, y: 40 }, { x: 10, y: 0 })).toEqual({ x: 10, y: 0, width: 20, height: 40 });
    expect(walls(room(none, 10, 0, 20, 40))).toEqual([
      "10,0 10,40",
      "10,0 30,0",
      "10,40 30,40",
      "30,0 30,40",
    ]);
  });

  it("share the wall between them: it stands once, whatever part of it each has", () => {
    const two = room(room(none, 0, 0, 40, 40), 40, 10, 20, 20);
    expect(lengthOf(two)).toBe(4 * 40 + 2 * 20 + 20);
    const long = room(room(none, 40, 10, 20, 20), 0, 0, 40, 40);
    expect(lengthOf(long)).toBe(lengthOf(two));
  });

  it("leave the wall that another room still has when they are taken away, as it was", () => {
    const one = room(none, 0, 0, 40, 40);
    const two = room(one, 40, 10, 20, 20);
    expect(lengthOf(withoutRoom(two, 1))).toBe(lengthOf(one));
    expect(lengthOf(withoutRoom(two, 0))).toBe(80);
    expect(withoutRoom(one, 0).plan.walls).toEqual([]);
    const painted = withRouteClass(one, 0, "insulated");
    const kept = withoutRoom(room(painted, 40, 0, 20, 40), 1);
    expect(kept.plan.walls.filter(({ routeClass }) => routeClass === "insulated")).toHaveLength(1);
  });

  it("keep the runs under floors when a room goes, and a run is taken away by itself, a wall never", () => {
    const one = withRun(room(none, 0, 0, 40, 40), { x: 0, y: 20 }, { x: 40, y: 30 }, "floor", "floor");
    expect(one.plan.walls.slice(4)).toEqual([
      { from: { x: 0, y: 20 }, to: { x: 40, y: 20 }, routeClass: "floor", as: "floor" },
      { from: { x: 40, y: 20 }, to: { x: 40, y: 30 }, routeClass: "floor", as: "floor" },
    ]);
    expect(withoutRoom(one, 0).plan.walls).toEqual(one.plan.walls.slice(4));
    expect(withoutRun(one, 4).plan.walls).toHaveLength(5);
    expect(withoutRun(one, 0)).toEqual(one);
  });
});

describe("stations put on the plan", () => {
  const house = room(none, 0, 0, 40, 40);

  it("stand at the nearest wall, so that a cable reaches them along it", () => {
    const placed = withPlace(withPlace(house, stationId("way-1"), { x: 3, y: 20 }), stationId("socket-1"), {
      x: 20,
      y: 37,
    });
    expect(placed.plan.places.map(({ at }) => at)).toEqual([
      { x: 0, y: 20 },
      { x: 20, y: 40 },
    ]);
    // 2 m down the wall and 2 m along the other.
    expect(routes(placed.plan)(stationId("way-1"), stationId("socket-1"))?.lengthM).toBeGreaterThanOrEqual(4);
    expect(nearestWall(none.plan, { x: 0, y: 0 })).toBeUndefined();
  });

  it("never stand on one another, and are moved rather than put there twice", () => {
    const first = withPlace(house, stationId("socket-1"), { x: 20, y: 0 });
    const second = withPlace(first, stationId("socket-2"), { x: 20, y: 0 });
    expect(second.plan.places.map(({ at }) => at)).toEqual([
      { x: 20, y: 0 },
      { x: 24, y: 0 },
    ]);
    const moved = withPlace(second, stationId("socket-1"), { x: 40, y: 20 });
    expect(moved.plan.places).toHaveLength(2);
  });
});
