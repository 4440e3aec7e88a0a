import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestLine } from "../../../kiosk/geometry/nearest-line.ts";
import { distanceToLine, distanceToRect, distanceToSegment } from "../../../kiosk/geometry/point.ts";

// Two cables 26 px apart on a 7-inch panel, where 5 mm is 26 px.
const level = (id: string, y: number) => ({
  id,
  line: [
    { x: 0, y },
    { x: 400, y },
  ],
});
const reachPx = 26;

describe("touching a thin cable with a thick finger", () => {
  it("picks a cable up to 5 mm beside the drawn line", () => {
    expect(nearestLine({ x: 200, y: 125 }, [level("a", 100)], reachPx)).toBe("a");
    expect(nearestLine({ x: 200, y: 127 }, [level("a", 100)], reachPx)).toBeUndefined();
  });

  it("picks the nearer of two cables that lie side by side, each half of the space between", () => {
    const two = [level("a", 100), level("b", 126)];
    expect(nearestLine({ x: 200, y: 112 }, two, reachPx)).toBe("a");
    expect(nearestLine({ x: 200, y: 114 }, two, reachPx)).toBe("b");
  });

  it("picks a cable whenever one is within reach, and always one that is nearest", () => {
    const lines = [level("a", 40), level("b", 80), level("c", 200)];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 260 }), (x, y) => {
        const far = lines.map(({ line }) => distanceToLine({ x, y }, line));
        const picked = nearestLine({ x, y }, lines, reachPx);
        const at = lines.findIndex(({ id }) => id === picked);
        if (Math.min(...far) > reachPx) expect(picked).toBeUndefined();
        else expect(far[at]).toBe(Math.min(...far));
      }),
    );
  });
});

describe("distances", () => {
  it("are measured to the end of a line beyond it", () => {
    expect(distanceToSegment({ x: 13, y: 4 }, { x: 0, y: 0 }, { x: 10, y: 0 })).toBe(5);
  });

  it("are nothing inside a plate", () => {
    expect(distanceToRect({ x: 5, y: 5 }, { x: 0, y: 0, width: 10, height: 10 })).toBe(0);
    expect(distanceToRect({ x: 13, y: 14 }, { x: 0, y: 0, width: 10, height: 10 })).toBe(5);
  });
});
