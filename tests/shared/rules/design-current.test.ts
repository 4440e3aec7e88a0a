import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { designCurrent } from "../../../shared/rules/design-current.ts";
import { factsOf, said, withoutSettings } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const load = (station: string, powerW: number) => ({ station: stationId(station), powerW });

describe("the load of a circuit", () => {
  it.each([
    { powerW: 32 * 230, says: [] },
    { powerW: 32 * 230 + 1, says: ["fix over way-1"] },
  ])("of $powerW W on 32 A says $says", ({ powerW, says }) => {
    const wiring = wire(["way-1.a socket-1.a", "socket-1.b socket-2.a"], {
      loads: [load("socket-1", 1000), load("socket-2", powerW - 1000)],
    });
    expect(said(designCurrent, wiring)).toEqual(says);
  });

  it("says nothing where no load is stated and there is no lamp", () => {
    expect(said(designCurrent, wire(["way-1.a socket-1.a"]))).toEqual([]);
  });

  it("counts what hangs on a connection unit by its fuse at most", () => {
    const wiring = wire(["way-1.a fcu-1.a", "fcu-1.c socket-1.a"], {
      settings: { "way-1": { deviceRatingA: 16 } },
      loads: [load("socket-1", 4000)],
    });
    expect(said(designCurrent, wiring)).toEqual([]);
  });

  it("gives a cooker its allowance: 12 kW with a socket outlet in the control is 27.65 A", () => {
    // Published worked example (textbook), On-Site Guide Table A2: 10 A, 30 % of the rest, 5 A for the socket outlet.
    const wiring = (ratingA: number) =>
      wire(["way-1.a control-1.a 6", "control-1.c cooker-1.a 6"], {
        settings: {
          "way-1": { deviceRatingA: ratingA },
          "control-1": { hasSocketOutlet: true },
          "cooker-1": { appliance: "cooker" },
        },
        loads: [load("cooker-1", 12000)],
      });
    expect(said(designCurrent, wiring(32))).toEqual([]);
    expect(factsOf(designCurrent, wiring(25))["designA"]).toBeCloseTo(27.65, 2);
  });

  it("gives hob and oven on one control the allowance once", () => {
    // 7 kW and 5 kW together as the 12 kW above, without a socket outlet: 22.65 A.
    const wiring = wire(["way-1.a control-1.a 6", "control-1.c hob-1.a 6", "control-1.d oven-1.a 6"], {
      settings: {
        "way-1": { deviceRatingA: 20 },
        "hob-1": { appliance: "hob" },
        "oven-1": { appliance: "oven" },
      },
      loads: [load("hob-1", 7000), load("oven-1", 5000)],
    });
    expect(factsOf(designCurrent, wiring)["designA"]).toBeCloseTo(22.65, 2);
  });
});

describe("the load of a lighting circuit", () => {
  const roses = (count: number, powerW?: number) => {
    const ids = Array.from({ length: count }, (_, index) => index + 1);
    return wire(
      ids.map((n) => (n === 1 ? "way-1.a rose-1.a 1.5" : `rose-${n - 1}.b rose-${n}.a 1.5`)),
      {
        settings: { "way-1": { deviceRatingA: 6 } },
        ...(powerW === undefined ? {} : { loads: ids.map((n) => load(`rose-${n}`, powerW)) }),
      },
    );
  };

  it("is all its lamps at once, without diversity: 13 of 100 W fit on 6 A, 14 do not", () => {
    // 6 A x 230 V = 1380 W.
    expect(said(designCurrent, roses(13, 100))).toEqual([]);
    expect(said(designCurrent, roses(14, 100))).toEqual(["fix over way-1"]);
    expect(said(designCurrent, roses(14, 10))).toEqual([]);
  });

  it("takes 100 W a lamp where nobody has said", () => {
    expect(said(designCurrent, roses(14))).toEqual(["fix over way-1"]);
  });
});

describe("where the device is not known", () => {
  it("it is asked for, once there is a load", () => {
    const wiring = wire(["way-1.a socket-1.a"], { loads: [load("socket-1", 1000)] });
    const unsaid = withoutSettings(wiring, "way-1");
    expect(said(designCurrent, unsaid)).toEqual(["missing deviceRatingA way-1"]);
  });
});
