import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LabelWish, layLabels } from "../../../kiosk/geometry/lay-labels.ts";
import { layRoomNames } from "../../../kiosk/geometry/lay-room-names.ts";
import { distanceToLine, isInside, overlaps, centreOf } from "../../../kiosk/geometry/point.ts";

const area = { x: 0, y: 0, width: 600, height: 320 };
const pill = { width: 110, height: 27 };
const short = { width: 44, height: 27 };

describe("the labels on cables", () => {
  it("never lie on each other, on a plate or outside the area", () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 0, max: 320 }) });
    const bent = fc.tuple(spot, spot).map(([a, b]) => [a, { x: b.x, y: a.y }, b]);
    fc.assert(
      fc.property(
        fc.array(bent, { minLength: 1, maxLength: 12 }),
        fc.array(spot, { maxLength: 6 }),
        (lines, spots) => {
          const solid = spots.map(({ x, y }) => ({ x, y, width: 64, height: 60 }));
          const wishes = lines.map((line, i): LabelWish => ({
            id: `c${i}`,
            line,
            forms: [pill, short],
            near: "middle",
          }));
          const set = layLabels(wishes, {
            area,
            solid,
            lines: wishes.map(({ id, line }) => ({ id, line })),
            halfLinePx: 9,
          });
          for (const [i, a] of set.entries()) {
            expect(isInside(a, area)).toBe(true);
            for (const plate of solid) expect(overlaps(a, plate)).toBe(false);
            for (const b of set.slice(i + 1)) expect(overlaps(a, b)).toBe(false);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it("lie on their own cable or right beside it", () => {
    const line = [
      { x: 50, y: 100 },
      { x: 500, y: 100 },
    ];
    const [label] = layLabels([{ id: "c", line, forms: [pill], near: "middle" }], {
      area,
      solid: [],
      lines: [],
      halfLinePx: 9,
    });
    expect(label && distanceToLine(centreOf(label), line)).toBe(0);
    expect(Math.abs((label ? centreOf(label).x : 0) - 275)).toBeLessThanOrEqual(5);
  });

  it("are written short where there is no room for the whole text", () => {
    const line = [
      { x: 100, y: 100 },
      { x: 170, y: 100 },
    ];
    const plates = [
      { x: 30, y: 20, width: 70, height: 200 },
      { x: 170, y: 20, width: 70, height: 200 },
    ];
    const [label] = layLabels([{ id: "c", line, forms: [pill, short], near: "middle" }], {
      area,
      solid: plates,
      lines: [],
      halfLinePx: 9,
    });
    expect(label?.form).toBe(1);
  });
});

describe("the names of rooms", () => {
  const room = { x: 0, y: 0, width: 300, height: 200 };
  const name = { name: "Kitchen", room, width: 90, height: 22 };

  it("stand at the top left where that is free", () => {
    expect(layRoomNames([name], [], 10)).toEqual([{ name: "Kitchen", x: 10, y: 6, width: 90, height: 22 }]);
  });

  it("move to another corner where a plate stands in the first", () => {
    const [moved] = layRoomNames([name], [{ x: 0, y: 0, width: 120, height: 80 }], 10);
    expect(moved?.x).toBe(200);
  });

  it("are left out where every corner is taken", () => {
    expect(layRoomNames([name], [room], 10)).toEqual([]);
  });
});
