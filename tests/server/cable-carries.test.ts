import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { stationId } from "../../shared/board/ids.ts";
import { scenarioKit } from "../../server/library.ts";
import { cableCarries } from "../../server/view/cable-carries.ts";
import { cableRun } from "../../server/view/cable-run.ts";
import { planZones } from "../../server/view/plan-zones.ts";

const kitOf = (name: string) => {
  const kit = scenarioKit(readFileSync(`scenarios/${name}.json`), name);
  if ("problems" in kit) throw new Error(name);
  return kit;
};

describe("what a cable carries, as the screen is told", () => {
  it.each([
    { ratingA: 27, neededA: 20, told: { ratingA: 27, neededA: 20, isBelow: false } },
    { ratingA: 20, neededA: 20, told: { ratingA: 20, neededA: 20, isBelow: false } },
    { ratingA: 17, neededA: 20, told: { ratingA: 17, neededA: 20, isBelow: true } },
    // Rounded to the worse side each: 31.96 A never reads as 32.
    { ratingA: 31.96, neededA: 32, told: { ratingA: 31.9, neededA: 32, isBelow: true } },
    { ratingA: 44, neededA: 32 / 0.725, told: { ratingA: 44, neededA: 44.2, isBelow: true } },
    { ratingA: 27 * 0.7, neededA: 13, told: { ratingA: 18.9, neededA: 13, isBelow: false } },
  ])("says $told of Iz $ratingA A where $neededA A are needed", ({ ratingA, neededA, told }) => {
    expect(cableCarries({ ratingA, neededA })).toEqual({ carries: told });
  });

  it("says nothing where one of the two is not known", () => {
    expect(cableCarries({ ratingA: 27 })).toEqual({});
    expect(cableCarries({ neededA: 20 })).toEqual({});
  });
});

describe("the house as its plan is told", () => {
  it("shows where cables lie in insulation, and how", () => {
    const zones = planZones(kitOf("loft-insulation").stripped.plan);
    expect(zones.map(({ kind, method, pieces }) => [kind, method, pieces.length])).toEqual([
      ["insulation", "101", 3],
    ]);
  });

  it("shows none where all is clipped direct", () => {
    expect(planZones(kitOf("first-spur").stripped.plan)).toEqual([]);
  });

  it("shows a metal-framed wall as what it is, beside what it is filled with", () => {
    const walls = [
      { from: { x: 0, y: 0 }, to: { x: 9, y: 0 }, routeClass: "stud" },
      { from: { x: 0, y: 0 }, to: { x: 0, y: 9 }, routeClass: "brick" },
    ];
    const routeClasses = { stud: { method: "102" as const, inMetalFramedWall: true }, brick: {} };
    expect(planZones({ walls, routeClasses }).map(({ kind, method }) => `${kind} ${method}`)).toEqual([
      "insulation 102",
      "metal-frame 102",
    ]);
  });

  // Down the house wall to (66, 30), then through the eaves: a metre of it decides.
  it("names the worst piece of a cable that runs through several", () => {
    const { routeBetween } = kitOf("loft-insulation");
    const through = routeBetween(stationId("way-3"), stationId("socket-1"));
    expect(through && cableRun(through)).toEqual({
      method: "101",
      worstPath: [
        { x: 66, y: 40 },
        { x: 66, y: 30 },
      ],
    });
    const plain = routeBetween(stationId("socket-1"), stationId("socket-2"));
    expect(plain && cableRun(plain)).toEqual({ method: "C" });
  });
});
