import { describe, expect, it } from "vitest";
import { guideFromPlates } from "../../../kiosk/geometry/guide-from-plates.ts";

const straight = [
  { x: 0, y: 100 },
  { x: 300, y: 100 },
];
const bent = [...straight, { x: 300, y: 400 }];

describe("the guide of a cable whose plate stands beside its place", () => {
  it("leaves the plate straight, and goes over into the rest of the route at the next corner", () => {
    expect(guideFromPlates(bent, { x: 10, y: 112 }, { x: 290, y: 400 }, 20)).toEqual([
      { x: 0, y: 112 },
      { x: 290, y: 112 },
      { x: 290, y: 400 },
    ]);
  });

  it("lies half way between two plates that both stand beside it", () => {
    expect(guideFromPlates(straight, { x: 0, y: 104 }, { x: 300, y: 112 }, 20).map(({ y }) => y)).toEqual([
      108, 108,
    ]);
  });

  it("is the route where a plate stands further aside, or is not there", () => {
    expect(guideFromPlates(bent, { x: 0, y: 130 }, { x: 330, y: 400 }, 20)).toEqual(bent);
    expect(guideFromPlates(bent, undefined, undefined, 20)).toEqual(bent);
  });
});
