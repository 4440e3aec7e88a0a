import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layPlates } from "../../../kiosk/geometry/lay-plates.ts";
import { centreOf, isInside, overlaps } from "../../../kiosk/geometry/point.ts";

// The room for the plan on a 7-inch panel of 800x480, and a plate of 12 mm there.
const area = { x: 30, y: 30, width: 530, height: 250 };
const plate = { width: 64, height: 60 };

describe("the plates of the stations on the plan", () => {
  it("stand where the plan has them as long as they have room", () => {
    const wishes = [
      { id: "a", centre: { x: 100, y: 100 }, ...plate },
      { id: "b", centre: { x: 400, y: 200 }, ...plate },
    ];
    expect(layPlates(wishes, area, 40).map(centreOf)).toEqual(wishes.map(({ centre }) => centre));
  });

  it("never lie on one another and never leave the area, up to ten on the smallest panel", () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 560 }), y: fc.integer({ min: 0, max: 300 }) });
    fc.assert(
      fc.property(fc.array(spot, { minLength: 2, maxLength: 10 }), (centres) => {
        const plates = layPlates(
          centres.map((centre, i) => ({ id: `s${i}`, centre, ...plate })),
          area,
          40,
        );
        for (const [i, a] of plates.entries()) {
          expect(isInside(a, area)).toBe(true);
          for (const b of plates.slice(i + 1)) expect(overlaps(a, b)).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("keep what is left of another left of it, and what is above it above, in a crowd too", () => {
    const wishes = [
      { id: "left", centre: { x: 250, y: 120 }, ...plate },
      { id: "right", centre: { x: 270, y: 125 }, ...plate },
      { id: "below", centre: { x: 258, y: 150 }, ...plate },
      { id: "above", centre: { x: 262, y: 100 }, ...plate },
    ];
    const [left, right, below, above] = layPlates(wishes, area, 40);
    expect(left && right && left.x < right.x).toBe(true);
    expect(above && below && above.y < below.y).toBe(true);
  });

  it("stay in their room as long as it has place for them, though their neighbours push", () => {
    const room = { x: 290, y: 30, width: 270, height: 250 };
    const wishes = [
      { id: "next-door", centre: { x: 260, y: 150 }, ...plate, room: { ...room, x: 30, width: 260 } },
      { id: "a", centre: { x: 300, y: 150 }, ...plate, room },
      { id: "b", centre: { x: 310, y: 155 }, ...plate, room },
      { id: "c", centre: { x: 330, y: 160 }, ...plate, room },
    ];
    const [nextDoor, ...here] = layPlates(wishes, area, 40);
    for (const one of here) expect(isInside(one, room)).toBe(true);
    expect((nextDoor?.x ?? 0) + (nextDoor?.width ?? 0)).toBeLessThanOrEqual(room.x);
  });

  it("stand in rows where there is no other way, and still do not overlap", () => {
    const wishes = Array.from({ length: 28 }, (_, i) => ({
      id: `s${i}`,
      centre: { x: 280, y: 150 },
      ...plate,
    }));
    const plates = layPlates(wishes, area, 40);
    for (const [i, a] of plates.entries())
      for (const b of plates.slice(i + 1)) expect(overlaps(a, b)).toBe(false);
  });

  it("come to stand at the same places every time", () => {
    const wishes = [1, 2, 3, 4].map((n) => ({ id: `s${n}`, centre: { x: 100 + n, y: 120 }, ...plate }));
    expect(layPlates(wishes, area, 40)).toEqual(layPlates(wishes, area, 40));
  });

  it("give up some of the gap between them rather than stand far from their places", () => {
    const upper = { id: "upper", centre: { x: 200, y: 120 }, ...plate, room: area };
    const lower = { id: "lower", centre: { x: 200, y: 190 }, ...plate, room: area };
    const moved = layPlates([upper, lower], area, 60).map(centreOf);
    expect(Math.max(...moved.map(({ x }) => Math.abs(x - 200)))).toBeLessThan(1);
  });
});
