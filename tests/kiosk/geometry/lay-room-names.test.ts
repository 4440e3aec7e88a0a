import { describe, expect, it } from "vitest";
import { layRoomNames } from "../../../kiosk/geometry/lay-room-names.ts";

const hall = { name: "Hall", room: { x: 0, y: 0, width: 200, height: 100 }, width: 40, height: 20 };

describe("the name of a room", () => {
  it("stands in its upper left corner", () => {
    expect(layRoomNames([hall], [], 10)).toEqual([{ name: "Hall", x: 10, y: 6, width: 40, height: 20 }]);
  });

  it("goes to another corner where a plate stands in the first", () => {
    const plate = { x: 5, y: 5, width: 60, height: 60 };
    expect(layRoomNames([hall], [plate], 10)[0]).toMatchObject({ x: 150, y: 6 });
  });

  it("goes between things where no corner is free, and stays in its room", () => {
    const bands = [
      { x: 0, y: 0, width: 200, height: 30 },
      { x: 0, y: 70, width: 200, height: 30 },
    ];
    const [name] = layRoomNames([hall], bands, 10);
    expect(name?.y).toBeGreaterThanOrEqual(30);
    expect((name?.y ?? 0) + 20).toBeLessThanOrEqual(70);
  });

  it("is left out where there is no place at all", () => {
    expect(layRoomNames([hall], [hall.room], 10)).toEqual([]);
  });
});
