import { describe, expect, it } from "vitest";
import { contactDots, faceRects } from "../../../kiosk/face/face-layout.ts";
import { fitPlan, toPx } from "../../../kiosk/geometry/fit-plan.ts";
import { isInside, overlaps } from "../../../kiosk/geometry/point.ts";
import { workshopFace } from "../faces.ts";

describe("the plan in the room the screen has for it", () => {
  it("lies wholly inside, in the middle", () => {
    const fit = fitPlan({ width: 110, height: 94 }, { width: 580, height: 320 }, 10);
    const [a, b] = [toPx(fit, { x: 0, y: 0 }), toPx(fit, { x: 110, y: 94 })];
    expect(a.x).toBeGreaterThanOrEqual(10);
    expect(a.y).toBeGreaterThanOrEqual(10);
    expect(b.x).toBeLessThanOrEqual(570);
    expect(b.y).toBeLessThanOrEqual(310);
    expect(a.x + b.x).toBeCloseTo(580);
    expect(a.y + b.y).toBeCloseTo(320);
  });

  it("is never drawn more than twice as wide or as high as it is", () => {
    const fit = fitPlan({ width: 10, height: 100 }, { width: 1000, height: 500 }, 0);
    expect(fit.scaleX / fit.scaleY).toBeCloseTo(2);
  });
});

describe("the face of the workshop board on the smallest panel", () => {
  const area = { width: 575, height: 315 };
  const leastPx = 53;
  const rects = faceRects(workshopFace, area, leastPx);

  it("has every station large enough to touch, inside the board and off the others", () => {
    const all = [...rects.values()];
    expect(all).toHaveLength(workshopFace.stations.length);
    for (const [i, rect] of all.entries()) {
      expect(rect.width).toBeGreaterThanOrEqual(leastPx);
      expect(rect.height).toBeGreaterThanOrEqual(leastPx);
      expect(isInside(rect, { x: 0, y: 0, ...area })).toBe(true);
      for (const other of all.slice(i + 1)) expect(overlaps(rect, other)).toBe(false);
    }
  });

  it("shows every contact inside its own station", () => {
    const dots = contactDots(workshopFace, rects, 28);
    for (const { id, entries } of workshopFace.stations)
      for (const { id: contact } of entries.flatMap(({ contacts }) => contacts)) {
        const dot = dots.get(contact);
        const rect = rects.get(id);
        expect(dot && rect && isInside({ ...dot, width: 0, height: 0 }, rect)).toBe(true);
      }
  });
});
