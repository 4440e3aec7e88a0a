import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { fusedLoad } from "../../../shared/rules/fused-load.ts";
import { said, withoutSettings } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const load = (station: string, powerW: number, isLongRunning = false) => ({
  station: stationId(station),
  powerW,
  isLongRunning,
});
const extension = ["way-1.a fcu-1.a", "fcu-1.c socket-1.a", "socket-1.b socket-2.a"];

describe("behind a 13 A fuse", () => {
  it("2990 W in all is held, a watt more at two outlets is not", () => {
    // BS 1363-4: 13 A x 230 V = 2990 W, for all of it together.
    expect(
      said(fusedLoad, wire(extension, { loads: [load("socket-1", 1500), load("socket-2", 1490)] })),
    ).toEqual([]);
    expect(
      said(fusedLoad, wire(extension, { loads: [load("socket-1", 1500), load("socket-2", 1491)] })),
    ).toEqual(["fix over fcu-1"]);
  });

  it("one appliance sold as 3 kW counts as 13 A", () => {
    expect(said(fusedLoad, wire(extension, { loads: [load("socket-1", 3000)] }))).toEqual([]);
    expect(said(fusedLoad, wire(extension, { loads: [load("socket-1", 3100)] }))).toEqual(["fix over fcu-1"]);
  });

  it("3 kW for hours must be justified, 2 kW need not", () => {
    expect(said(fusedLoad, wire(extension, { loads: [load("socket-1", 3000, true)] }))).toEqual([
      "query long-running fcu-1",
    ]);
    expect(said(fusedLoad, wire(extension, { loads: [load("socket-1", 2000, true)] }))).toEqual([]);
  });

  it("a load stated at the unit itself counts", () => {
    expect(said(fusedLoad, wire(["way-1.a fcu-1.a"], { loads: [load("fcu-1", 3500)] }))).toEqual([
      "fix over fcu-1",
    ]);
  });
});

describe("behind a smaller fuse inside a larger one", () => {
  const nested = [
    "way-1.a fcu-1.a",
    "fcu-1.c socket-1.a",
    "socket-1.b fcu-2.a",
    "fcu-2.c lamp-1.a 1",
    "lamp-1.b lamp-2.a 1",
  ];
  const at3 = { settings: { "fcu-2": { fuseRatingA: 3 } } };

  it("lamps of 100 W fit on 3 A", () => {
    expect(said(fusedLoad, wire(nested, at3))).toEqual([]);
  });

  it("only the smaller one is over where its own load is too much", () => {
    expect(said(fusedLoad, wire(nested, { ...at3, loads: [load("lamp-1", 1000)] }))).toEqual([
      "fix over fcu-2",
    ]);
  });
});

describe("where the fuse is not known", () => {
  it("it is asked for once there is a load", () => {
    const wiring = wire(extension, { loads: [load("socket-1", 1000)] });
    const unsaid = withoutSettings(wiring, "fcu-1");
    expect(said(fusedLoad, unsaid)).toEqual(["missing fuseRatingA fcu-1"]);
    const { loads: _loads, ...silent } = wiring;
    expect(said(fusedLoad, { ...silent, stations: unsaid.stations })).toEqual([]);
  });
});
