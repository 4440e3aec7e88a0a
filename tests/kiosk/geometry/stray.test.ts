import { describe, expect, it } from "vitest";
import { strayPx } from "../../../kiosk/geometry/stray.ts";

const route = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 100 },
];
const beside = route.map(({ x, y }) => ({ x: x + 7, y: y - 7 }));

// Eiter and Mannila 1994: the least leash of two who both walk forwards.
describe("how far a drawn line strays from a route", () => {
  it("is nothing on the route, and the distance beside it", () => {
    expect(strayPx(route, route, [])).toBe(0);
    expect(strayPx(beside, route, [])).toBeCloseTo(Math.hypot(7, 7));
  });

  it("tells a corner that is cut: the route's corner lies 70.7 off the straight line", () => {
    const cut = strayPx([route[0] ?? { x: 0, y: 0 }, { x: 100, y: 100 }], route, []);
    expect(cut).toBeGreaterThan(Math.hypot(50, 50) - 0.1);
    expect(cut).toBeLessThan(Math.hypot(50, 50) + 10);
  });

  it("tells a line that is nowhere far off but the other way round", () => {
    expect(strayPx(route.toReversed(), route, [])).toBeGreaterThan(100);
    const there = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 20, y: 0 },
      { x: 100, y: 0 },
    ];
    expect(
      strayPx(
        there,
        [
          { x: 0, y: 0 },
          { x: 100, y: 0 },
        ],
        [],
      ),
    ).toBeCloseTo(20, -0.5);
  });

  it("does not count while both are round the same plate", () => {
    const plate = { x: 30, y: -30, width: 40, height: 60 };
    const round = [
      { x: 0, y: 0 },
      { x: 35, y: 0 },
      { x: 35, y: 25 },
      { x: 65, y: 25 },
      { x: 65, y: 0 },
      { x: 100, y: 0 },
    ];
    const straight = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
    ];
    expect(strayPx(round, straight, [])).toBeCloseTo(25, -0.5);
    expect(strayPx(round, straight, [plate])).toBeLessThan(10);
  });
});
