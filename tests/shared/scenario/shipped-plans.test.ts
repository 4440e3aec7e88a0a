import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { stationOf } from "../../../shared/board/ids.ts";
import type { PlanPoint } from "../../../shared/scenario/plan-graph.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";

const scenarios = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => JSON.parse(readFileSync(`scenarios/${name}`, "utf8")) as Scenario);

// Sizes on a plan 110 steps wide, as the screen draws them.
const plate = { width: 14, height: 10 };
const label = { width: 10, height: 4 };

interface Piece {
  a: PlanPoint;
  b: PlanPoint;
}

const pieces = (points: PlanPoint[]): Piece[] =>
  points.slice(1).map((b, index) => ({ a: points[index] ?? b, b }));

/** Length two level or upright pieces lie on one another, in steps. */
function sharedSteps({ a, b }: Piece, { a: c, b: d }: Piece): number {
  const overlap = (p: number, q: number, r: number, s: number) =>
    Math.max(0, Math.min(Math.max(p, q), Math.max(r, s)) - Math.max(Math.min(p, q), Math.min(r, s)));
  if (a.x === b.x && c.x === d.x && a.x === c.x) return overlap(a.y, b.y, c.y, d.y);
  if (a.y === b.y && c.y === d.y && a.y === c.y) return overlap(a.x, b.x, c.x, d.x);
  return 0;
}

const pairs = <T>(items: readonly T[]): [T, T][] =>
  items.flatMap((a, index) => items.slice(index + 1).map((b): [T, T] => [a, b]));

describe.each(scenarios)("the plan of $id", (scenario) => {
  const { plan } = scenario;
  const between = routes(plan);
  const ways = (scenario.modelAnswers[0]?.cables ?? []).map(({ from, to }) => ({
    from: stationOf(from),
    to: stationOf(to),
    points: between(stationOf(from), stationOf(to))?.pathPoints ?? [],
  }));

  it("fills an area of about seven to six with its rooms", () => {
    expect(plan.width / plan.height).toBeCloseTo(7 / 6, 1);
    const area = plan.rooms.reduce((sum, { width, height }) => sum + width * height, 0);
    expect(area).toBe(plan.width * plan.height);
  });

  it("stands every plate inside the house, clear of the others and with room for a label between", () => {
    for (const { at } of plan.places) {
      expect(at.x - plate.width / 2).toBeGreaterThanOrEqual(2);
      expect(at.x + plate.width / 2).toBeLessThanOrEqual(plan.width - 2);
      expect(at.y - plate.height / 2).toBeGreaterThanOrEqual(2);
      expect(at.y + plate.height / 2).toBeLessThanOrEqual(plan.height - 2);
    }
    for (const [{ station: a, at: p }, { station: b, at: q }] of pairs(plan.places)) {
      const gapX = Math.abs(p.x - q.x) - plate.width;
      const gapY = Math.abs(p.y - q.y) - plate.height;
      expect(gapX >= label.width || gapY >= label.height, `${a} and ${b} are too close`).toBe(true);
    }
  });

  it("lets the cables of the first model answer run apart and past other plates", () => {
    for (const [one, other] of pairs(ways))
      for (const p of pieces(one.points))
        for (const q of pieces(other.points))
          expect(sharedSteps(p, q), `${one.from}-${one.to} and ${other.from}-${other.to}`).toBe(0);
    for (const { from, to, points } of ways)
      for (const { station, at } of plan.places)
        if (station !== from && station !== to)
          for (const { a, b } of pieces(points)) {
            const isClear =
              Math.max(a.x, b.x) < at.x - plate.width / 2 ||
              Math.min(a.x, b.x) > at.x + plate.width / 2 ||
              Math.max(a.y, b.y) < at.y - plate.height / 2 ||
              Math.min(a.y, b.y) > at.y + plate.height / 2;
            expect(isClear, `${from}-${to} runs under ${station}`).toBe(true);
          }
  });

  it("leaves every model cable a straight piece for its label", () => {
    for (const { from, to, points } of ways) {
      const longest = Math.max(...pieces(points).map(({ a, b }) => Math.hypot(a.x - b.x, a.y - b.y)));
      expect(longest, `${from}-${to}`).toBeGreaterThanOrEqual(plate.height + label.height);
    }
  });

  it("has doors: every room opens to another", () => {
    const walls = plan.walls.filter((wall) => (wall.as ?? "wall") === "wall");
    for (const room of plan.rooms) {
      const edges: Piece[] = [
        { a: { x: room.x, y: room.y }, b: { x: room.x + room.width, y: room.y } },
        { a: { x: room.x, y: room.y + room.height }, b: { x: room.x + room.width, y: room.y + room.height } },
        { a: { x: room.x, y: room.y }, b: { x: room.x, y: room.y + room.height } },
        { a: { x: room.x + room.width, y: room.y }, b: { x: room.x + room.width, y: room.y + room.height } },
      ];
      const around = edges.reduce((sum, { a, b }) => sum + Math.hypot(a.x - b.x, a.y - b.y), 0);
      const walled = edges.reduce(
        (sum, edge) =>
          sum + walls.reduce((all, { from, to }) => all + sharedSteps(edge, { a: from, b: to }), 0),
        0,
      );
      expect(walled, room.name.en).toBeLessThan(around);
      expect(walled, room.name.en).toBeGreaterThan(around / 2);
    }
  });
});

describe("the texts of the scenarios", () => {
  const texts = (value: unknown): { en: string; pl: string }[] => {
    if (typeof value !== "object" || value === null) return [];
    if ("en" in value && "pl" in value) return [value as { en: string; pl: string }];
    return Object.values(value).flatMap(texts);
  };
  const sentences = (text: string): string[] => text.split(/[.?!:]\s/);

  it.each(scenarios)("of $id are in short sentences, in two languages", (scenario) => {
    for (const { en, pl } of texts(scenario)) {
      for (const sentence of [...sentences(en), ...sentences(pl)])
        expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(26);
      if (en.includes(" ")) expect(pl).not.toBe(en);
    }
  });
});
