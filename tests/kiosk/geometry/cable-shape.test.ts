import { describe, expect, it } from "vitest";
import {
  alongLine,
  besideLine,
  lineLength,
  roundPath,
  tidyLine,
} from "../../../kiosk/geometry/cable-shape.ts";
import { cableWidthMm, lanePitchMm } from "../../../kiosk/geometry/cable-width.ts";
import { isDrawnBackwards } from "../../../kiosk/plan/drawn-backwards.ts";

const bend = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 100 },
];

describe("the shape of a drawn cable", () => {
  it("keeps its cores side by side round a bend", () => {
    expect(besideLine(bend, 5)).toEqual([
      { x: 0, y: 5 },
      { x: 95, y: 5 },
      { x: 95, y: 100 },
    ]);
    expect(besideLine(bend, -5)).toEqual([
      { x: 0, y: -5 },
      { x: 105, y: -5 },
      { x: 105, y: 100 },
    ]);
  });

  it("turns an inner core more tightly than an outer one", () => {
    expect(roundPath(bend, 10, 4)).toContain("L94 0Q100 0 100 6");
    expect(roundPath(bend, 10, -4)).toContain("L86 0Q100 0 100 14");
  });

  it("never rounds a corner beyond half of its shorter side", () => {
    const tight = [
      { x: 0, y: 0 },
      { x: 8, y: 0 },
      { x: 8, y: 100 },
    ];
    expect(roundPath(tight, 50)).toContain("L4 0Q8 0 8 4");
  });

  it("drops corners that are none", () => {
    const straight = [0, 10, 10, 30].map((x) => ({ x, y: 0 }));
    expect(tidyLine(straight)).toEqual([
      { x: 0, y: 0 },
      { x: 30, y: 0 },
    ]);
  });

  it("is measured along its bends", () => {
    expect(lineLength(bend)).toBe(200);
    expect(alongLine(bend, 150)).toEqual({ x: 100, y: 50, isLevel: false });
  });

  it("is thicker for thicker copper, and always thinner than its lane", () => {
    const sizesMm2 = [1, 1.5, 2.5, 4, 6, 10, 16];
    const widths = sizesMm2.map(cableWidthMm);
    for (let i = 1; i < 6; i += 1) expect(widths[i]).toBeGreaterThan(widths[i - 1] ?? Infinity);
    expect(Math.max(...widths)).toBeLessThan(lanePitchMm);
    expect(cableWidthMm(undefined)).toBeGreaterThan(0);
  });
});

describe("the order of the letters at a cable's end", () => {
  // A core that lies to the left seen along the line is on top where it runs to the right, and on the left
  // where it runs upwards.
  it.each([
    { runs: "right", to: { x: 10, y: 0 }, isBackwards: false },
    { runs: "up", to: { x: 0, y: -10 }, isBackwards: false },
    { runs: "left", to: { x: -10, y: 0 }, isBackwards: true },
    { runs: "down", to: { x: 0, y: 10 }, isBackwards: true },
  ])("is turned round where the cable runs $runs: $isBackwards", ({ to, isBackwards }) => {
    expect(isDrawnBackwards([{ x: 0, y: 0 }, to], "start")).toBe(isBackwards);
  });
});
