import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Plate, layPlates } from "../../../kiosk/geometry/lay-plates.ts";
import type { Point } from "../../../kiosk/geometry/point.ts";
import { routeCables } from "../../../kiosk/geometry/route-cables.ts";
import type { RouteWish } from "../../../kiosk/geometry/route-field.ts";

const area = { width: 770, height: 600 };
const pitchPx = 30;

const plateAt = (id: string, x: number, y: number): Plate => ({ id, x, y, width: 90, height: 64 });
const field = (plates: Plate[]) => ({ ...area, pitchPx, plates });
const wish = (id: string, from: string, to: string, guide: Point[] = []): RouteWish => ({
  id,
  from,
  to,
  guide,
});

/** Every step of a line as one pitch long piece: its middle and whether it is level. */
const pieces = (line: readonly Point[]): string[] => {
  const found: string[] = [];
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    for (let far = 5; far < long; far += 10)
      found.push(
        a.y === b.y
          ? `level ${Math.round(a.y)} ${Math.round((a.x + Math.sign(b.x - a.x) * far) / 10)}`
          : `upright ${Math.round(a.x)} ${Math.round((a.y + Math.sign(b.y - a.y) * far) / 10)}`,
      );
  }
  return found;
};

const crosses = (line: readonly Point[], plate: Plate): boolean =>
  line.some((b, i) => {
    const a = line[i - 1];
    if (!a) return false;
    return (
      Math.max(a.x, b.x) > plate.x + 1 &&
      Math.min(a.x, b.x) < plate.x + plate.width - 1 &&
      Math.max(a.y, b.y) > plate.y + 1 &&
      Math.min(a.y, b.y) < plate.y + plate.height - 1
    );
  });

const seeded = fc.record({
  places: fc.array(fc.record({ x: fc.integer({ min: 0, max: 770 }), y: fc.integer({ min: 0, max: 600 }) }), {
    minLength: 3,
    maxLength: 9,
  }),
  pairs: fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { minLength: 1, maxLength: 9 }),
});

const scene = ({ places, pairs }: { places: Point[]; pairs: [number, number][] }) => {
  const plates = layPlates(
    places.map((centre, i) => ({ id: `s${i}`, centre, width: 90, height: 64 })),
    { x: 44, y: 44, width: 682, height: 512 },
    57,
  );
  const wishes = pairs.flatMap(([a, b], i) => {
    const [from, to] = [plates[a % plates.length], plates[b % plates.length]];
    return from && to && from !== to ? [wish(`c${i}`, from.id, to.id)] : [];
  });
  return { plates, wishes };
};

describe("the way a cable is drawn across the plan", () => {
  it("begins and ends at the edges of its two plates", () => {
    const plates = [plateAt("a", 60, 60), plateAt("b", 500, 400)];
    const line = routeCables(field(plates), [wish("c", "a", "b")], new Map()).get("c") ?? [];
    const onEdge = (point: Point | undefined, plate: Plate) =>
      point !== undefined &&
      (point.x === plate.x ||
        point.x === plate.x + plate.width ||
        point.y === plate.y ||
        point.y === plate.y + plate.height);
    expect(onEdge(line[0], plates[0] as Plate)).toBe(true);
    expect(onEdge(line.at(-1), plates[1] as Plate)).toBe(true);
  });

  it("runs level or upright only", () => {
    fc.assert(
      fc.property(seeded, (drawn) => {
        const { plates, wishes } = scene(drawn);
        for (const line of routeCables(field(plates), wishes, new Map()).values())
          for (let i = 1; i < line.length; i += 1)
            expect(line[i]?.x === line[i - 1]?.x || line[i]?.y === line[i - 1]?.y).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it("goes round the plates of stations it does not serve", () => {
    const plates = [plateAt("a", 60, 260), plateAt("between", 330, 260), plateAt("b", 600, 260)];
    const guide = [
      { x: 105, y: 292 },
      { x: 645, y: 292 },
    ];
    const line = routeCables(field(plates), [wish("c", "a", "b", guide)], new Map()).get("c") ?? [];
    expect(line.length).toBeGreaterThan(2);
    expect(crosses(line, plates[1] as Plate)).toBe(false);
  });

  it("never lies on another cable where up to nine cables join up to nine stations", () => {
    fc.assert(
      fc.property(seeded, (drawn) => {
        const { plates, wishes } = scene(drawn);
        const ways = routeCables(field(plates), wishes, new Map());
        const all = [...ways.values()].flatMap((line) => [...new Set(pieces(line))]);
        // A plate in a corner has four places for a cable at least.
        const busiest = Math.max(
          ...plates.map(({ id }) => wishes.filter(({ from, to }) => from === id || to === id).length),
        );
        fc.pre(busiest <= 4);
        expect(ways.size).toBe(wishes.length);
        expect(new Set(all).size).toBe(all.length);
      }),
      { numRuns: 60 },
    );
  });

  it("gives two cables between the same two stations a lane each", () => {
    const plates = [plateAt("a", 60, 60), plateAt("b", 500, 60)];
    const guide = [
      { x: 105, y: 92 },
      { x: 545, y: 92 },
    ];
    const ways = routeCables(
      field(plates),
      [wish("c", "a", "b", guide), wish("d", "a", "b", guide)],
      new Map(),
    );
    const [c, d] = [pieces(ways.get("c") ?? []), pieces(ways.get("d") ?? [])];
    expect(c.length).toBeGreaterThan(10);
    expect(c.filter((piece) => d.includes(piece))).toEqual([]);
  });

  it("follows the walls it is run along rather than the shortest way", () => {
    const plates = [plateAt("a", 40, 280), plateAt("b", 640, 280)];
    const along = [
      { x: 85, y: 312 },
      { x: 85, y: 60 },
      { x: 685, y: 60 },
      { x: 685, y: 312 },
    ];
    const straight = routeCables(field(plates), [wish("c", "a", "b")], new Map()).get("c") ?? [];
    const guided = routeCables(field(plates), [wish("c", "a", "b", along)], new Map()).get("c") ?? [];
    expect(Math.min(...straight.map(({ y }) => y))).toBeGreaterThan(250);
    expect(Math.min(...guided.map(({ y }) => y))).toBeLessThan(100);
  });

  it("leaves the cables that are drawn already where they are when one more is plugged", () => {
    fc.assert(
      fc.property(seeded, (drawn) => {
        const { plates, wishes } = scene(drawn);
        const before = routeCables(field(plates), wishes.slice(1), new Map());
        const after = routeCables(field(plates), wishes, before);
        fc.pre(wishes.length <= 4);
        for (const [id, line] of before) expect(after.get(id)).toEqual(line);
      }),
      { numRuns: 40 },
    );
  });

  it("finds a way for a lead with both ends in one station", () => {
    const plates = [plateAt("a", 300, 260)];
    const line = routeCables(field(plates), [wish("c", "a", "a")], new Map()).get("c") ?? [];
    expect(line.length).toBeGreaterThanOrEqual(3);
    expect(crosses(line, plates[0] as Plate)).toBe(false);
  });

  it("turns nowhere one lane after it turned where there is another way", () => {
    // The plates stand one lane apart.
    const plates = [plateAt("a", 60, 260), plateAt("b", 560, 290)];
    const guide = [
      { x: 105, y: 292 },
      { x: 605, y: 292 },
    ];
    const line = routeCables(field(plates), [wish("c", "a", "b", guide)], new Map()).get("c") ?? [];
    for (let i = 2; i < line.length - 1; i += 1) {
      const [a, b] = [line[i - 1], line[i]];
      expect(a && b && Math.abs(b.x - a.x) + Math.abs(b.y - a.y)).toBeGreaterThan(pitchPx * 1.5);
    }
  });

  it("stays within the walls round the house, though its guide runs along them", () => {
    const house = { x: 40, y: 40, width: 690, height: 520 };
    const plates = [plateAt("a", 80, 90), plateAt("b", 600, 90)];
    const guide = [
      { x: 125, y: 122 },
      { x: 125, y: 20 },
      { x: 645, y: 20 },
      { x: 645, y: 122 },
    ];
    const line =
      routeCables({ ...field(plates), house }, [wish("c", "a", "b", guide)], new Map()).get("c") ?? [];
    expect(line.length).toBeGreaterThan(2);
    for (const { y } of line) expect(y).toBeGreaterThanOrEqual(house.y);
  });
});
