import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import type { Plan } from "../../../shared/scenario/scenario.schema.ts";
import { testDepth } from "../../depth.ts";

const at = (x: number, y: number) => ({ x, y });
const place = (station: string, x: number, y: number) => ({ station: stationId(station), at: at(x, y) });
const wall = (x1: number, y1: number, x2: number, y2: number, routeClass = "clipped") => ({
  from: at(x1, y1),
  to: at(x2, y2),
  routeClass,
});
type PlanParts = Pick<Plan, "walls" | "places" | "routeClasses" | "overrides">;
const plan = (parts: Partial<PlanParts>): PlanParts => ({
  routeClasses: { clipped: { method: "C" } },
  walls: [],
  places: [],
  ...parts,
});
const between = (parts: Partial<PlanParts>) => routes(plan(parts))(stationId("a"), stationId("b"));

describe("the length of a cable between two places", () => {
  // Worked by hand: (way along the walls + 2 drops of 1 m) x 1.1.
  it.each([
    {
      way: "along one wall",
      walls: [wall(0, 0, 100, 0)],
      a: at(10, 0),
      b: at(60, 0),
      lengthM: (5 + 2) * 1.1,
    },
    {
      way: "round a corner",
      walls: [wall(0, 0, 100, 0), wall(100, 0, 100, 80)],
      a: at(70, 0),
      b: at(100, 40),
      lengthM: (3 + 4 + 2) * 1.1,
    },
    {
      way: "over a crossing",
      walls: [wall(0, 20, 100, 20), wall(50, 0, 50, 80)],
      a: at(0, 20),
      b: at(50, 80),
      lengthM: (5 + 6 + 2) * 1.1,
    },
    {
      way: "from beside the wall",
      walls: [wall(0, 0, 100, 0)],
      a: at(10, 8),
      b: at(60, 12),
      lengthM: (0.8 + 5 + 1.2 + 2) * 1.1,
    },
    {
      way: "along a sloping wall",
      walls: [wall(0, 0, 30, 40)],
      a: at(0, 0),
      b: at(30, 40),
      lengthM: (5 + 2) * 1.1,
    },
    {
      way: "by the shorter of two ways",
      walls: [
        wall(0, 0, 100, 0),
        wall(0, 0, 0, 30),
        wall(0, 30, 100, 30),
        wall(100, 0, 100, 30),
        wall(40, 0, 40, 30),
      ],
      a: at(20, 0),
      b: at(20, 30),
      lengthM: (2 + 3 + 2 + 2) * 1.1,
    },
    {
      way: "along walls that lie on one another",
      walls: [wall(0, 0, 60, 0), wall(40, 0, 100, 0)],
      a: at(10, 0),
      b: at(90, 0),
      lengthM: (8 + 2) * 1.1,
    },
    { way: "within one spot", walls: [wall(0, 0, 60, 0)], a: at(10, 0), b: at(10, 0), lengthM: 2 * 1.1 },
  ])("is $lengthM m $way", ({ walls, a, b, lengthM }) => {
    const places = [place("a", a.x, a.y), place("b", b.x, b.y)];
    expect(between({ walls, places })?.lengthM).toBeCloseTo(lengthM, 2);
  });

  it("is unknown where no wall leads from one to the other, or a station has no place", () => {
    const walls = [wall(0, 0, 40, 0), wall(60, 0, 100, 0)];
    expect(between({ walls, places: [place("a", 10, 0), place("b", 80, 0)] })).toBeUndefined();
    expect(between({ walls, places: [place("a", 10, 0)] })).toBeUndefined();
  });
});

describe("the way a cable is drawn", () => {
  it("has the corners only, and of equal ways the one with fewest turns", () => {
    const walls = [
      wall(0, 0, 40, 0),
      wall(0, 20, 40, 20),
      wall(0, 0, 0, 40),
      wall(20, 0, 20, 40),
      wall(40, 0, 40, 40),
      wall(0, 40, 40, 40),
    ];
    const places = [place("a", 0, 0), place("b", 40, 40)];
    expect(between({ walls, places })?.pathPoints).toEqual([at(0, 0), at(40, 0), at(40, 40)]);
  });

  it("turns round with its ends", () => {
    const walls = [wall(0, 0, 40, 0), wall(40, 0, 40, 40)];
    const find = routes(plan({ walls, places: [place("a", 0, 0), place("b", 40, 40)] }));
    expect(find(stationId("b"), stationId("a"))?.pathPoints).toEqual([at(40, 40), at(40, 0), at(0, 0)]);
  });
});

describe("how a cable through several route classes is rated", () => {
  const walls = [wall(0, 0, 40, 0, "clipped"), wall(40, 0, 80, 0, "loft"), wall(80, 0, 100, 0, "stud")];
  const routeClasses = {
    clipped: { method: "C" as const, depthMm: 20 },
    loft: { method: "103" as const },
    stud: { method: "A" as const, inMetalFramedWall: true },
  };
  const rated = (bx: number) =>
    between({ walls, routeClasses, places: [place("a", 10, 0), place("b", bx, 0)] });

  it("is as its worst piece", () => {
    expect(rated(30)).toMatchObject({ method: "C" });
    expect(rated(60)).toMatchObject({ method: "103" });
    expect(rated(90)).toMatchObject({ method: "103" });
  });

  it("keeps the least depth and any metal-framed wall of all pieces", () => {
    expect(rated(60)).toMatchObject({ depthMm: 20 });
    expect(rated(60)).not.toHaveProperty("inMetalFramedWall");
    expect(rated(90)).toMatchObject({ depthMm: 20, inMetalFramedWall: true });
  });

  it("counts ambient, grouping and insulation, not the method alone", () => {
    const classes = {
      plain: { method: "C" as const },
      hot: { method: "C" as const, ambientC: 50 },
      bunched: { method: "C" as const, groupedCircuits: 4 },
      lagged: { method: "C" as const, insulationMm: 400 },
    };
    for (const name of ["hot", "bunched", "lagged"])
      expect(
        between({
          routeClasses: classes,
          walls: [wall(0, 0, 50, 0, "plain"), wall(50, 0, 100, 0, name)],
          places: [place("a", 0, 0), place("b", 100, 0)],
        }),
      ).toMatchObject(classes[name as keyof typeof classes]);
  });

  it("is as an override states, whichever way round the pair is written", () => {
    const find = (a: string, b: string) =>
      between({
        walls,
        routeClasses,
        places: [place("a", 10, 0), place("b", 60, 0)],
        overrides: [{ a: stationId(a), b: stationId(b), lengthM: 31, method: "101" }],
      });
    expect(find("a", "b")).toMatchObject({ lengthM: 31, method: "101", depthMm: 20 });
    expect(find("b", "a")).toEqual(find("a", "b"));
    expect(find("a", "b")).not.toHaveProperty("a");
  });
});

describe("any plan whose walls hang together", () => {
  const coordinate = fc.integer({ min: 0, max: 120 });
  const point = fc.record({ x: coordinate, y: coordinate });
  const anyPlan = fc
    .record({
      corners: fc.array(point, { minLength: 3, maxLength: 8 }),
      places: fc.array(point, { minLength: 2, maxLength: 5 }),
    })
    .map(({ corners, places }) =>
      plan({
        walls: corners
          .slice(1)
          .map((to, index) => ({ from: corners[index] ?? to, to, routeClass: "clipped" })),
        places: places.map(({ x, y }, index) => place(`socket-${index + 1}`, x, y)),
      }),
    );

  it("keeps the point where a way turns back on itself", () => {
    const find = routes({
      routeClasses: { clipped: { method: "C" } },
      walls: [{ from: { x: 0, y: 20 }, to: { x: 70, y: 20 }, routeClass: "clipped" }],
      places: [
        { station: stationId("socket-1"), at: { x: 10, y: 0 } },
        { station: stationId("socket-2"), at: { x: 10, y: 10 } },
      ],
    });
    expect(find(stationId("socket-1"), stationId("socket-2"))?.pathPoints).toEqual([
      { x: 10, y: 0 },
      { x: 10, y: 20 },
      { x: 10, y: 10 },
    ]);
  });

  it("gives any two places the same length both ways, never less than the straight line", () => {
    fc.assert(
      fc.property(anyPlan, (parts) => {
        const find = routes(parts);
        for (const a of parts.places)
          for (const b of parts.places) {
            const there = find(a.station, b.station);
            const back = find(b.station, a.station);
            expect(there?.lengthM).toBe(back?.lengthM);
            expect(there?.pathPoints).toEqual(back?.pathPoints.toReversed());
            const straightM = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y) / 10;
            expect(there?.lengthM ?? 0).toBeGreaterThanOrEqual(straightM);
            const drawnM = (there?.pathPoints ?? []).reduce((sum, p, index, all) => {
              const q = all[index + 1];
              return q ? sum + Math.hypot(p.x - q.x, p.y - q.y) / 10 : sum;
            }, 0);
            expect(there?.lengthM).toBeCloseTo((drawnM + 2) * 1.1, 1);
          }
      }),
      { numRuns: 100 * testDepth },
    );
  });

  it("never makes a way longer by a wall more", () => {
    fc.assert(
      fc.property(anyPlan, point, point, (parts, from, to) => {
        // Places stand on walls: an added wall may otherwise be the one a place reaches.
        const onWalls = {
          ...parts,
          places: parts.walls.map((w, index) => place(`socket-${index + 1}`, w.from.x, w.from.y)),
        };
        const more = { ...onWalls, walls: [...onWalls.walls, { from, to, routeClass: "clipped" }] };
        const [a, b] = [stationId("socket-1"), stationId("socket-2")];
        expect(routes(more)(a, b)?.lengthM ?? 0).toBeLessThanOrEqual(
          (routes(onWalls)(a, b)?.lengthM ?? 0) + 0.011,
        );
      }),
      { numRuns: 100 * testDepth },
    );
  });
});
