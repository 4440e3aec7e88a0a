import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { voltDrop } from "../../../shared/rules/volt-drop.ts";
import { factsOf, said, withoutSettings } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const load = (station: string, powerW: number) => ({ station: stationId(station), powerW });
const at16 = { settings: { "way-1": { deviceRatingA: 16 } } };

// BS 7671 525.202: 3 % (6.9 V) for lighting and 5 % (11.5 V) for the rest. BS EN 60228 at 70 °C: 2.5 mm² 8.892, 1.5 mm²
// 14.52, 4 mm² 5.532 milliohm per metre and conductor.
describe("voltage lost to a socket outlet", () => {
  it.each([
    // 16 A over 40.4 m there and back: 11.497 V; over 40.5 m: 11.525 V.
    { lengthM: 40.4, says: [] },
    { lengthM: 40.5, says: ["fix other socket-1"] },
  ])("with one on 16 A and 2.5 mm² is held to 11.5 V: $lengthM m", ({ lengthM, says }) => {
    expect(said(voltDrop, wire([`way-1.a socket-1.a ${lengthM}m`], at16))).toEqual(says);
  });

  it("counts 20 A at one outlet in turn and the rest of In in equal parts at the others", () => {
    // Three outlets 10 m apart on 4 mm² and 32 A: at the last 10 m x 2 x 0.005532 x (32 + 26 + 20).
    const wiring = wire([
      "way-1.a socket-1.a 4 50m",
      "socket-1.b socket-2.a 4 10m",
      "socket-2.b socket-3.a 4 10m",
    ]);
    const dropV = 2 * 0.005532 * (50 * 32 + 10 * 26 + 10 * 20);
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(dropV, 9);
  });

  it("beyond a connection unit counts no more than its fuse", () => {
    // 13 A through 20 m of 2.5 mm² and 26 m of 1.5 mm², the other outlet drawing the rest of 32 A at the way's end.
    const wiring = wire(["way-1.a fcu-1.a 2.5 20m", "fcu-1.c socket-1.a 1.5 26m"]);
    const dropV = 2 * 13 * (20 * 0.008892 + 26 * 0.01452);
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(dropV, 9);
    const three = wire(["way-1.a fcu-1.a 2.5 20m", "fcu-1.c socket-1.a 1.5 26m"], {
      settings: { "fcu-1": { fuseRatingA: 3 } },
    });
    expect(said(voltDrop, three)).toEqual([]);
  });

  it("of a ring is what both legs lose together", () => {
    // Published worked example (recomputed): 40 m ring, 32 A in the middle: 5.76 V by the table, a ring of 80 m twice that.
    const ring = (lengthM: number) =>
      wire([`way-1.a socket-1.a ${lengthM / 2}m`, `socket-1.b way-1.b ${lengthM / 2}m`], {
        loads: [load("socket-1", 32 * 230)],
      });
    expect(said(voltDrop, ring(40))).toEqual([]);
    expect(said(voltDrop, ring(80))).toEqual([]);
    expect(factsOf(voltDrop, ring(84))["dropV"]).toBeCloseTo((84 / 40) * 5.76 * (17.784 / 18), 6);
  });

  it("that is the same at two points is one finding about both", () => {
    const wiring = wire(["way-1.a socket-1.a 90m", "way-1.b socket-2.a 90m"], at16);
    const [finding] = voltDrop.check(buildModel(wiring));
    expect(finding).toMatchObject({ kind: "evidence", causes: [{ id: "socket-1" }, { id: "socket-2" }] });
  });

  it("takes the stated loads where there are some, even where the usual load would fail", () => {
    const wiring = wire(["way-1.a socket-1.a 60m"], { ...at16, loads: [load("socket-1", 1000)] });
    expect(said(voltDrop, wiring)).toEqual([]);
  });
});

describe("voltage lost to a light", () => {
  const lights = (lengthM: number, powerW: number) =>
    wire([`way-1.a rose-1.a 1.5 ${lengthM}m`, "rose-1.s switch-1.s 1.5 1m"], {
      settings: { "way-1": { deviceRatingA: 6 } },
      loads: [load("rose-1", powerW)],
    });

  it("is held to 6.9 V", () => {
    // 690 W is 3 A; with 1 m to the switch and back in line: 3 x 0.01452 x (2 x 78 + 2) = 6.88 V.
    expect(said(voltDrop, lights(78, 690))).toEqual([]);
    expect(said(voltDrop, lights(79, 690))).toEqual(["fix lighting rose-1"]);
  });

  it("counts a lamp of 100 W where none is stated", () => {
    const wiring = wire(["way-1.a lamp-1.a 1 1000m"], { settings: { "way-1": { deviceRatingA: 6 } } });
    const currentA = 100 / 230;
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(2 * currentA * 1000 * 0.02172, 6);
  });
});

describe("where something is not known", () => {
  it("no drop is given and the cable is named", () => {
    expect(said(voltDrop, wire(["way-1.a socket-1.a ? 90m"]))).toEqual(["missing csaMm2 socket-1.a~way-1.a"]);
  });

  it("the device is named where no loads are stated, and not asked for where they are", () => {
    const wiring = withoutSettings(wire(["way-1.a socket-1.a 10m"]), "way-1");
    expect(said(voltDrop, wiring)).toEqual(["missing deviceRatingA way-1"]);
    expect(said(voltDrop, { ...wiring, loads: [load("socket-1", 1000)] })).toEqual([]);
  });

  it("a fuse that nobody has said is named", () => {
    const wiring = withoutSettings(wire(["way-1.a fcu-1.a 10m"]), "fcu-1");
    expect(said(voltDrop, wiring)).toEqual(["missing fuseRatingA fcu-1"]);
  });

  it("a swapped or shorted circuit is left to the rules that name the fault", () => {
    expect(said(voltDrop, wire(["way-1.a socket-1.a 90m L:N N:L E:E"], at16))).toEqual([]);
    const ring = wire(["way-1.a socket-1.a 90m L:N N:L E:E", "socket-1.b way-1.b 90m"]);
    expect(said(voltDrop, ring)).toEqual([]);
  });

  it("a part that two ways feed is left to the rule that names it", () => {
    expect(said(voltDrop, wire(["way-1.a socket-1.a 90m", "socket-1.b way-2.a 90m"]))).toEqual([]);
  });

  it("a point that neutral does not reach has no drop", () => {
    expect(said(voltDrop, wire(["way-1.a socket-1.a 900m -N"], at16))).toEqual([]);
  });
});
