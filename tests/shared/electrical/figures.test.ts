import { describe, expect, it } from "vitest";
import { cableId, stationId, type EntryId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { figuresOf } from "../../../shared/rules/figures.ts";
import { wire } from "../rules/wire.ts";

const figures = (lines: string[], extras = {}) => figuresOf(buildModel(wire(lines, extras)));
const cable = (a: string, b: string) => cableId(a as EntryId, b as EntryId);

describe("what a cable is asked to carry", () => {
  it.each([
    { what: "20 A to an outlet, whatever less is stated there", powerW: 2300, designA: 20 },
    { what: "the stated load where that is more", powerW: 5750, designA: 25 },
  ])("is $what", ({ powerW, designA }) => {
    const { cables } = figures(["way-1.a socket-1.a"], {
      loads: [{ station: stationId("socket-1"), powerW }],
    });
    const own = cables[cable("way-1.a", "socket-1.a")]!;
    expect(own.designA).toBeCloseTo(designA, 9);
    expect(own.share).toBeCloseTo(designA / 27, 9);
  });

  it("is the stated load of a fixed appliance", () => {
    const { cables } = figures(["way-1.a heater-1.a"], {
      loads: [{ station: stationId("heater-1"), powerW: 2300 }],
    });
    expect(cables[cable("way-1.a", "heater-1.a")]!.designA).toBeCloseTo(10, 9);
  });

  it("is In at the way and 20 A at the last outlet of a radial without stated loads", () => {
    const { cables } = figures([
      "way-1.a socket-1.a 4",
      "socket-1.b socket-2.a 4",
      "socket-2.b socket-3.a 4",
    ]);
    expect(cables[cable("way-1.a", "socket-1.a")]!.designA).toBeCloseTo(32, 9);
    expect(cables[cable("socket-1.b", "socket-2.a")]!.designA).toBeCloseTo(26, 9);
    expect(cables[cable("socket-2.b", "socket-3.a")]!.designA).toBeCloseTo(20, 9);
  });

  it("beyond a connection unit is its fuse at most", () => {
    const { cables } = figures(["way-1.a fcu-1.a", "fcu-1.c socket-1.a 1.5", "socket-1.b socket-2.a 1.5"]);
    expect(cables[cable("fcu-1.c", "socket-1.a")]!.designA).toBeCloseTo(13, 9);
    expect(cables[cable("way-1.a", "fcu-1.a")]!.designA).toBeCloseTo(13, 9);
  });

  it("is not known while a size of its circuit is not, and nothing else of it is lost", () => {
    const { cables, points } = figures(["way-1.a socket-1.a ?", "socket-1.b socket-2.a"]);
    const second = cables[cable("socket-1.b", "socket-2.a")]!;
    expect(second.designA).toBeUndefined();
    expect(second.ratingA).toBe(27);
    expect(points).toEqual({});
  });
});

describe("what a point gets", () => {
  it("is its voltage drop, its fault loop and both limits", () => {
    // 10 m of 2.5/1.5 mm²: 20 A x 20 x 0.008892 V; Zs 0.35 + 10 x 0.023412 ohm; BS 7671 Table 41.3 B32 1.37 ohm.
    const { points } = figures(["way-1.a socket-1.a 10m"]);
    const own = points[stationId("socket-1")]!;
    expect(own.dropV).toBeCloseTo(20 * 20 * 0.008892, 9);
    expect(own.dropLimitV).toBeCloseTo(11.5, 9);
    expect(own.zsOhm).toBeCloseTo(0.35 + 10 * 0.023412, 9);
    expect(own.zsLimitOhm).toBe(1.37);
  });
});
