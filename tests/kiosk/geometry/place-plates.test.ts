import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placePlates } from "../../../kiosk/geometry/place-plates.ts";
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
    expect(placePlates(wishes, area, 40).map(centreOf)).toEqual(wishes.map(({ centre }) => centre));
  });

  it("never lie on one another and never leave the area, up to ten on the smallest panel", () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 560 }), y: fc.integer({ min: 0, max: 300 }) });
    fc.assert(
      fc.property(fc.array(spot, { minLength: 2, maxLength: 10 }), (centres) => {
        const plates = placePlates(
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

  it("come to stand at the same places every time", () => {
    const wishes = [1, 2, 3, 4].map((n) => ({ id: `s${n}`, centre: { x: 100 + n, y: 120 }, ...plate }));
    expect(placePlates(wishes, area, 40)).toEqual(placePlates(wishes, area, 40));
  });
});
