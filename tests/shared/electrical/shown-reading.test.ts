import { describe, expect, it } from "vitest";
import type { ContactId, StationId } from "../../../shared/board/ids.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import { asBuilt } from "../../../shared/electrical/hidden-faults.ts";
import { insulationTestV, leftInOhm, partsThatCanBeIn } from "../../../shared/electrical/left-in-parts.ts";
import type { MeterSetup } from "../../../shared/electrical/meter-setup.ts";
import { polarityAt } from "../../../shared/electrical/polarity-at.ts";
import { showInsulation, showOhm, type ShownReading } from "../../../shared/electrical/shown-reading.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { terse } from "./terse-wiring.ts";

const at = (contact: string): ContactId => contact as ContactId;
const way = "way-1" as StationId;
const link: MeterSetup = { links: [{ way, between: ["L", "E"] }] };
const radial = terse({ cables: ["way-1.a socket-1.a 2.5 22"] });

const ohm = (
  wiring: Wiring,
  red: string | null,
  black: string | null,
  setup: MeterSetup = link,
): ShownReading =>
  showOhm(wiring, asBuilt(copperOf(wiring)), setup, {
    red: red === null ? null : at(red),
    black: black === null ? null : at(black),
    nulledOhm: 0.08,
  });

describe("the display of the low-resistance ohmmeter", () => {
  it("shows ohms where copper joins the probes", () => {
    // Published worked example: 22 m of 2.5/1.5 mm² come to R1 + R2 of 0.43 ohm.
    expect(ohm(radial, "socket-1.front.L", "socket-1.front.E")).toEqual({
      shows: "ohm",
      resistanceOhm: 0.43,
    });
  });

  it("says open with a probe in the air, and over range where no copper joins them", () => {
    expect(ohm(radial, null, "socket-1.front.E")).toEqual({ shows: "open" });
    expect(ohm(radial, "socket-1.front.L", "socket-1.front.N")).toEqual({ shows: "over-range" });
  });

  it("says unclear where the board cannot tell a contact of the circuit: a bad line is no broken core", () => {
    const blind = { ...radial, unknown: [at("socket-1.a.E")] };
    expect(ohm(blind, "socket-1.front.L", "socket-1.front.E")).toEqual({
      shows: "unclear",
      because: "board",
    });
    const elsewhere = {
      ...terse({ cables: ["way-1.a socket-1.a 2.5 22", "socket-3.a socket-4.a 2.5 5"] }),
      unknown: [at("socket-4.a.L")],
    };
    expect(ohm(elsewhere, "socket-1.front.L", "socket-1.front.E")).toMatchObject({ shows: "ohm" });
  });

  it("says unclear while nobody has said the size of a cable of the circuit", () => {
    const unsized = terse({ cables: ["way-1.a socket-1.a ? 22"] });
    expect(ohm(unsized, "socket-1.front.L", "socket-1.front.E")).toEqual({
      shows: "unclear",
      because: "size",
    });
  });

  it("reads a lamp that was left in as what it is, and nothing through a neon or electronic parts", () => {
    const lights = terse({ cables: ["way-1.a light-1.a 1.5 8"], loads: { "light-1": 60 } });
    const seen = (part: "lamp" | "neon" | "electronics") =>
      ohm(lights, "light-1.front.L", "light-1.front.N", {
        partsIn: leftInOhm([{ station: "light-1" as StationId, part }], lights.loads!, "low-ohms"),
      });
    // 230² / 60 W
    expect(seen("lamp")).toEqual({ shows: "ohm", resistanceOhm: 881.67 });
    expect(seen("neon")).toEqual({ shows: "over-range" });
    expect(seen("electronics")).toEqual({ shows: "over-range" });
  });
});

describe("the display of the insulation tester", () => {
  const boiler = terse({
    cables: ["way-1.a fcu-1.a 2.5 10", "fcu-1.c appliance-1.a 1.5 3"],
    settings: { "appliance-1": { appliance: "boiler" } },
    loads: { "appliance-1": 130 },
  });
  const built = asBuilt(copperOf(boiler));
  const parts = partsThatCanBeIn(boiler.stations, boiler.loads!).toReversed();
  const show = (partsIn: typeof parts, red = "way-1.a.L", black = "way-1.a.N"): ShownReading =>
    showInsulation(
      boiler,
      built,
      { partsIn: leftInOhm(partsIn, boiler.loads!, "insulation") },
      {
        red: at(red),
        black: at(black),
      },
    );

  it("lists what can be left in: the neon of an FCU, the electronic parts of a boiler", () => {
    expect(parts).toEqual([
      { station: "fcu-1", part: "neon" },
      { station: "appliance-1", part: "electronics" },
    ]);
  });

  it("is over range with all of it out, and reads low between line and neutral with any of it in", () => {
    expect(show([])).toEqual({ shows: "over-range" });
    const [neon, electronics] = parts;
    expect(show([neon!])).toEqual({ shows: "megohm", insulationMegohm: 0.2 });
    expect(show([electronics!])).toEqual({ shows: "megohm", insulationMegohm: 0.05 });
    // 0.2 and 0.05 megohm in parallel.
    expect(show(parts)).toEqual({ shows: "megohm", insulationMegohm: 0.04 });
    expect(show(parts, "way-1.a.L", "way-1.a.E")).toEqual({ shows: "over-range" });
  });

  it("is made at 250 V where electronic parts are in, at 500 V otherwise", () => {
    // BS 7671 643.3.3, from memory.
    expect(insulationTestV(parts, 500)).toBe(250);
    expect(insulationTestV(parts.slice(0, 1), 500)).toBe(500);
    expect(insulationTestV([], 500)).toBe(500);
  });
});

describe("polarity, found during the R1 + R2 test", () => {
  const found = (wiring: Wiring, line: string, setup: MeterSetup = link): boolean | undefined =>
    polarityAt(asBuilt(copperOf(wiring)), setup, { line: at(line), earth: at(line.replace(/\w+$/, "E")) });

  it("is right where line reads to earth and neutral does not", () => {
    expect(found(radial, "socket-1.front.L")).toBe(true);
  });

  it("is wrong where line and neutral are crossed", () => {
    const crossed = terse({ cables: ["way-1.a socket-1.a 2.5 22 L-N N-L E-E"] });
    expect(found(crossed, "socket-1.front.L")).toBe(false);
  });

  it("is right with the loads left in, through which neutral reads more", () => {
    const loaded = terse({ cables: ["way-1.a socket-1.a 2.5 22"], loads: { "socket-1": 2800 } });
    const partsIn = leftInOhm(
      [{ station: "socket-1" as StationId, part: "load" }],
      loaded.loads!,
      "low-ohms",
    );
    expect(found(loaded, "socket-1.front.L", { ...link, partsIn })).toBe(true);
    const crossed = terse({ cables: ["way-1.a socket-1.a 2.5 22 L-N N-L E-E"], loads: { "socket-1": 2800 } });
    expect(found(crossed, "socket-1.front.L", { ...link, partsIn })).toBe(false);
  });

  it("is wrong where line and neutral are joined", () => {
    const joined = terse({ cables: ["way-1.a socket-1.a 2.5 22 L-L N-N E-E L-N"] });
    expect(found(joined, "socket-1.front.L")).toBe(false);
  });

  it("is not shown without the link, or where a core is broken", () => {
    expect(found(radial, "socket-1.front.L", {})).toBeUndefined();
    const broken = terse({ cables: ["way-1.a socket-1.a 2.5 22 L-L N-N"] });
    expect(found(broken, "socket-1.front.L")).toBeUndefined();
  });

  it("of a switched line is right where the switch makes and breaks it", () => {
    const lighting = (cores: string): Wiring =>
      terse({ cables: ["way-1.a rose-1.a 1.5 8", `rose-1.s switch-1.s 1.5 4 ${cores}`] });
    expect(found(lighting("L-L SL-SL E-E"), "rose-1.front.SL")).toBe(true);
    expect(found(lighting("L-L SL-L E-E"), "rose-1.front.SL")).toBe(false);
  });

  it("is found round a ring with line crossed with earth at the way", () => {
    const ring = (cores: string): Wiring =>
      terse({ cables: [`way-1.a socket-1.a 2.5 9 ${cores}`, "socket-1.b way-1.b 2.5 9"] });
    const ends: MeterSetup = {
      ringEnds: new Map([[way, { ends: ["way-1.a", "way-1.b"] as never, state: "crossed", with: "E" }]]),
    };
    expect(found(ring("L-L N-N E-E"), "socket-1.front.L", ends)).toBe(true);
    expect(found(ring("L-N N-L E-E"), "socket-1.front.L", ends)).toBe(false);
  });
});
