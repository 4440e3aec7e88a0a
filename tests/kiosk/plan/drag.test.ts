import { describe, expect, it } from "vitest";
import { movedTo, plateUnder, pressAt, released } from "../../../kiosk/plan/drag.ts";

const plates = [
  { id: "socket-1", x: 100, y: 100, width: 60, height: 60 },
  { id: "socket-2", x: 300, y: 100, width: 60, height: 60 },
];
const mmPx = 5;

describe("a finger on the plan", () => {
  it("takes hold of the plate it goes down on, and of nothing beside one", () => {
    expect(pressAt({ x: 130, y: 130 }, plates)?.station).toBe("socket-1");
    expect(pressAt({ x: 220, y: 130 }, plates)).toBeUndefined();
  });

  it("taps as long as it moves no more than 2.5 mm, and drags for good once it has", () => {
    const press = pressAt({ x: 130, y: 130 }, plates);
    if (!press) throw new Error("nothing is held");
    expect(movedTo(press, { x: 142, y: 130 }, mmPx).isDrag).toBe(false);
    const drag = movedTo(press, { x: 143, y: 130 }, mmPx);
    expect(drag.isDrag).toBe(true);
    expect(movedTo(drag, { x: 130, y: 130 }, mmPx)).toMatchObject({ isDrag: true, station: "socket-1" });
  });

  it("ends on a plate that it lets go over or right beside", () => {
    expect(plateUnder({ x: 330, y: 130 }, plates, mmPx)).toBe("socket-2");
    expect(plateUnder({ x: 281, y: 130 }, plates, mmPx)).toBe("socket-2");
    expect(plateUnder({ x: 230, y: 130 }, plates, mmPx)).toBeUndefined();
  });

  it.each([
    { end: { x: 330, y: 130 }, meant: { kind: "lay", from: "socket-1", to: "socket-2" } },
    { end: { x: 285, y: 150 }, meant: { kind: "lay", from: "socket-1", to: "socket-2" } },
    { end: { x: 146, y: 130 }, meant: { kind: "tap", station: "socket-1" } },
    // A finger that went down near the edge and slipped off it by some 4 mm.
    { at: { x: 158, y: 130 }, end: { x: 178, y: 136 }, meant: { kind: "tap", station: "socket-1" } },
    { end: { x: 230, y: 130 }, meant: { kind: "missed" } },
  ])("lifted at $end.x, $end.y means $meant.kind", ({ at = { x: 130, y: 130 }, end, meant }) => {
    const press = pressAt(at, plates);
    if (!press) throw new Error("nothing is held");
    expect(released(press, end, plates, mmPx)).toEqual(meant);
  });
});
