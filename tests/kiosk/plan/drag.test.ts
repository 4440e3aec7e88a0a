import { describe, expect, it } from "vitest";
import { movedTo, plateUnder, pressAt } from "../../../kiosk/plan/drag.ts";

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
    expect(plateUnder({ x: 292, y: 130 }, plates, mmPx)).toBe("socket-2");
    expect(plateUnder({ x: 230, y: 130 }, plates, mmPx)).toBeUndefined();
  });
});
