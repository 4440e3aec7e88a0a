import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { voltageDropsOf } from "../../../shared/electrical/voltage-drops.ts";
import { voltDrop } from "../../../shared/rules/volt-drop.ts";
import { factsOf, said, withoutSettings } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const load = (station: string, powerW: number) => ({ station: stationId(station), powerW });
const at16 = { settings: { "way-1": { deviceRatingA: 16 } } };

// BS 7671 525.202: 3 % (6.9 V) for lighting and 5 % (11.5 V) for the rest. BS EN 60228 at 70 °C: 2.5 mm² 8.892, 1.5 mm²
// 14.52, 4 mm² 5.532 milliohm per metre and conductor.
/** A ring of two outlets, so many metres to each and one between. */
const legs = (lengthM: number): string[] => [
  `way-1.a socket-1.a ${lengthM}m`,
  "socket-1.b socket-2.a 1m",
  `socket-2.c way-1.b ${lengthM}m`,
];

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

  it("is not less because a load is stated there: the outlet may be asked for 20 A", () => {
    const wiring = wire(["way-1.a socket-1.a 60m"], { ...at16, loads: [load("socket-1", 1000)] });
    expect(said(voltDrop, wiring)).toEqual(["fix other socket-1"]);
  });

  const boiler = [...legs(65), "socket-2.b fcu-1.a 1m", "fcu-1.c boiler-1.a 1m"];
  it.each([
    { what: "without the boiler", lines: legs(65), loads: [] },
    { what: "with a boiler whose load nobody has said", lines: boiler, loads: [] },
    { what: "with a boiler of 150 W", lines: boiler, loads: [load("boiler-1", 150)] },
  ])("round a ring of 130 m is too much $what", ({ lines, loads }) => {
    const wiring = wire(lines, { loads, settings: { "fcu-1": { fuseRatingA: 3 } } });
    expect(said(voltDrop, wiring)).not.toEqual([]);
    const { dropV = 0 } = voltageDropsOf(buildModel(wiring)).points.get(stationId("socket-2")) ?? {};
    expect(dropV).toBeGreaterThan(14.5);
  });

  it("is not hidden by a lamp of 40 W on a fuse behind it: B20, 60 m", () => {
    // 20 A over 60 m: 2 x 60 x 0.008892 x 20 = 21.3 V; the lamp, with no current of its own, loses as much.
    const lines = ["way-1.a socket-1.a 60m", "socket-1.b fcu-1.a 1m", "fcu-1.c lamp-1.a 1m"];
    const wiring = wire(lines, {
      settings: { "way-1": { deviceRatingA: 20 }, "fcu-1": { fuseRatingA: 3 } },
      loads: [load("lamp-1", 40)],
    });
    // The unit is as far as the outlet, and is named with it.
    expect(said(voltDrop, wiring)).toEqual(["fix other fcu-1", "fix lighting lamp-1"]);
    const lost = voltageDropsOf(buildModel(wiring)).points;
    for (const id of ["socket-1", "lamp-1"])
      expect(lost.get(stationId(id))?.dropV).toBeCloseTo(2 * 60 * 0.008892 * 20, 9);
  });

  it("counts at a lamp in the turn of the outlet before it: B20, 28 m", () => {
    // 2 x 28 x 0.008892 x 20 = 9.96 V at the outlet (limit 11.5) and at the lamp (limit 6.9).
    const lines = ["way-1.a socket-1.a 28m", "socket-1.b fcu-1.a 1m", "fcu-1.c lamp-1.a 1m"];
    const wiring = wire(lines, { settings: { "way-1": { deviceRatingA: 20 }, "fcu-1": { fuseRatingA: 3 } } });
    expect(said(voltDrop, wiring)).toEqual(["fix lighting lamp-1"]);
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(2 * 28 * 0.008892 * 20, 9);
  });

  it("behind a fuse counts the rest of In at the outlets before it", () => {
    // B32: 13 A behind the fuse and 9.5 A at each of two outlets: 28 m x 32 A, 1 m x 22.5 A, 1 m and 8 m x 13 A.
    const wiring = wire([
      "way-1.a socket-1.a 4 28m",
      "socket-1.b socket-2.a 4 1m",
      "socket-2.b fcu-1.a 2.5 1m",
      "fcu-1.c socket-3.a 1.5 8m",
    ]);
    const lostV = 2 * (0.005532 * (28 * 32 + 22.5) + 0.008892 * 13 + 0.01452 * 8 * 13);
    expect(lostV).toBeCloseTo(13.4, 1);
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(lostV, 9);
  });

  it("gives what one point cannot take to the others in equal parts", () => {
    // At the end 20 A; of 12 A the unit takes its 3 A and the first two outlets 4.5 A each.
    const wiring = wire(
      [
        "way-1.a fcu-1.a 4 50m",
        "fcu-1.b socket-1.a 4 10m",
        "socket-1.b socket-2.a 4 10m",
        "socket-2.b socket-3.a 4 10m",
      ],
      { settings: { "fcu-1": { fuseRatingA: 3 } } },
    );
    const lostV = 2 * 0.005532 * (50 * 32 + 10 * (29 + 24.5 + 20));
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo(lostV, 9);
  });

  it("with stated loads that are more than the usual ones is that of the stated loads", () => {
    const outlets = (loads: ReturnType<typeof load>[]) =>
      factsOf(voltDrop, wire(["way-1.a socket-1.a 60m", "socket-1.b socket-2.a 60m"], { ...at16, loads }));
    // Two loads of 16 A at the end: more than the device carries for long, which is another rule's matter.
    expect(outlets([load("socket-2", 32 * 230)])["dropV"]).toBeCloseTo(2 * 120 * 0.008892 * 32, 9);
    expect(outlets([load("socket-2", 230)])["dropV"]).toBeCloseTo(2 * 120 * 0.008892 * 16, 9);
  });

  it("counts a load behind a fuse no higher than the fuse, and a cooker at its diversity", () => {
    // Nothing but fixed appliances: 13 A of 26 A stated; 10 A + 30 % of 30 A = 19 A of a 40 A cooker.
    const heater = wire(["way-1.a fcu-1.a 40m", "fcu-1.c heater-1.a 20m"], {
      loads: [load("heater-1", 26 * 230)],
    });
    expect(factsOf(voltDrop, heater)["dropV"]).toBeCloseTo(2 * 60 * 0.008892 * 13, 9);
    const cooker = wire(["way-1.a cooker-1.a 40m"], {
      settings: { "cooker-1": { appliance: "cooker" } },
      loads: [load("cooker-1", 40 * 230)],
    });
    expect(factsOf(voltDrop, cooker)["dropV"]).toBeCloseTo(2 * 40 * 0.008892 * 19, 9);
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

  it("the device is named, with stated loads too, for the rest of its current may flow elsewhere", () => {
    const wiring = withoutSettings(wire(["way-1.a socket-1.a 10m"]), "way-1");
    expect(said(voltDrop, wiring)).toEqual(["missing deviceRatingA way-1"]);
    expect(said(voltDrop, { ...wiring, loads: [load("socket-1", 1000)] })).toEqual([
      "missing deviceRatingA way-1",
    ]);
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

describe("voltage lost to an appliance whose load nobody has said, where no socket outlet is", () => {
  // On 16 A and 2.5 mm² a point 40.4 m away loses 11.497 V at the most the device lets through, 40.5 m away 11.525 V.
  const run = (lengthM: number, loads: ReturnType<typeof load>[] = []) =>
    wire([`way-1.a heater-1.a ${lengthM}m`], { ...at16, loads });

  it("is nothing to ask about where even all of In loses no more than it may", () => {
    expect(said(voltDrop, run(20))).toEqual([]);
    expect(said(voltDrop, run(40.4))).toEqual([]);
  });

  it("cannot be told where it hangs on the load", () => {
    expect(said(voltDrop, run(40.5))).toEqual(["missing powerW heater-1"]);
    expect(said(voltDrop, run(90))).toEqual(["missing powerW heater-1"]);
  });

  it("is told once the load is", () => {
    expect(said(voltDrop, run(90, [load("heater-1", 3000)]))).toEqual(["fix other heater-1"]);
    expect(said(voltDrop, run(90, [load("heater-1", 500)]))).toEqual([]);
  });

  it("asks for the load of the appliance, not of the lamp that it would dim, and only for what is not stated", () => {
    const lines = ["way-1.a lamp-1.a 30m", "lamp-1.b heater-1.a 1m", "lamp-1.b heater-2.a 1m"];
    const loads = [load("lamp-1", 40), load("heater-2", 100)];
    // 16 A over 30 m lose 8.5 V: over the 6.9 V of the lamp, under the 11.5 V of the heaters.
    expect(said(voltDrop, wire(lines, { ...at16, loads }))).toEqual(["missing powerW heater-1"]);
  });

  it("is too much without regard to it where the stated loads alone lose too much; nothing is asked then", () => {
    const lines = ["way-1.a heater-2.a 90m", "way-1.b heater-1.a 5m"];
    const wiring = wire(lines, { ...at16, loads: [load("heater-2", 3000)] });
    expect(said(voltDrop, wiring)).toEqual(["fix other heater-2"]);
    // 3000 W: 13.04 A over 90 m.
    expect(factsOf(voltDrop, wiring)).toMatchObject({ isStated: true });
    expect(factsOf(voltDrop, wiring)["dropV"]).toBeCloseTo((2 * 90 * 0.008892 * 3000) / 230, 9);
  });

  it("asks at a connection unit with nothing behind it as well", () => {
    const unit = (lengthM: number) =>
      wire([`way-1.a fcu-1.a ${lengthM}m`], { settings: { ...at16.settings, "fcu-1": { fuseRatingA: 13 } } });
    expect(said(voltDrop, unit(40))).toEqual([]);
    expect(said(voltDrop, unit(60))).toEqual(["missing powerW fcu-1"]);
  });
});
