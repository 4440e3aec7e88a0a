import { describe, expect, it } from "vitest";
import type { ContactId, StationId } from "../../../shared/board/ids.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import { asBuilt, standingFaults } from "../../../shared/electrical/hidden-faults.ts";
import { meterNetwork, type MeterSetup } from "../../../shared/electrical/meter-setup.ts";
import { resistanceBetweenOhm } from "../../../shared/electrical/meter.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { terse } from "./terse-wiring.ts";

const way = "way-1" as StationId;
const radial = terse({
  cables: ["way-1.a socket-1.a 2.5 10", "socket-1.b fcu-1.a 2.5 10", "fcu-1.c socket-2.a 2.5 10"],
});

function reading(
  fault: HiddenFault,
  red: string,
  black: string,
  between: "L-N" | "L-E" | "N-E" = "L-E",
): number {
  const setup: MeterSetup = { links: [{ way, between: between.split("-") as ["L", "E"] }] };
  const meter = meterNetwork(asBuilt(copperOf(radial), [fault]), setup);
  return resistanceBetweenOhm(meter, red as ContactId, black as ContactId)!;
}
const r1 = 0.0741;
const r2 = 0.121;
const first = "socket-1.a~way-1.a";

describe("a hidden fault", () => {
  it("of a broken core opens the reading", () => {
    const fault: HiddenFault = { kind: "open-core", cable: first, role: "E" };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeGreaterThan(1999);
    expect(reading(fault, "socket-1.front.L", "socket-1.front.N", "L-N")).toBeCloseTo(2 * r1, 9);
  });

  it("of a poor joint adds its ohms", () => {
    const fault: HiddenFault = { kind: "high-resistance", cable: first, role: "L", resistanceOhm: 0.7 };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeCloseTo(r1 + r2 + 0.7, 9);
  });

  it("of a thinner protective conductor shows in R2", () => {
    // BS EN 60228: 18.1 milliohm per metre for 1.0 mm².
    const fault: HiddenFault = { kind: "wrong-cpc", cable: first, cpcCsaMm2: 1 };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeCloseTo(r1 + 0.181, 9);
  });

  it("of crossed cores puts line where neutral should be", () => {
    const fault: HiddenFault = { kind: "crossed-cores", cable: first, roles: ["L", "N"] };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeGreaterThan(1999);
    expect(reading(fault, "socket-1.front.N", "socket-1.front.E")).toBeCloseTo(r1 + r2, 9);
  });

  it("of a link missing in a connection unit cuts what is beyond", () => {
    const fault: HiddenFault = { kind: "missing-link", station: "fcu-1" as StationId, role: "L" };
    expect(reading(fault, "socket-2.front.L", "socket-2.front.E")).toBeGreaterThan(1999);
    expect(reading(fault, "socket-2.front.N", "socket-2.front.E", "N-E")).toBeCloseTo(3 * (r1 + r2), 9);
  });

  it("of a link missing in a socket outlet keeps the outlet and cuts what goes on from it", () => {
    const fault: HiddenFault = { kind: "missing-link", station: "socket-1" as StationId, role: "L" };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeCloseTo(r1 + r2, 9);
    expect(reading(fault, "socket-2.front.L", "socket-2.front.E")).toBeGreaterThan(1999);
  });

  it("on a cable that is not there changes nothing", () => {
    const fault: HiddenFault = { kind: "open-core", cable: "socket-8.a~socket-9.a", role: "L" };
    expect(reading(fault, "socket-1.front.L", "socket-1.front.E")).toBeCloseTo(r1 + r2, 9);
  });

  it("never touches what is sensed", () => {
    const copper = copperOf(radial);
    const before = structuredClone(copper);
    asBuilt(copper, [
      { kind: "crossed-cores", cable: first, roles: ["L", "N"] },
      { kind: "high-resistance", cable: first, role: "E", resistanceOhm: 1 },
      { kind: "missing-link", station: "fcu-1" as StationId, role: "N" },
    ]);
    expect(copper).toEqual(before);
  });

  it("goes with its cable once that has been out for two seconds", () => {
    const fault: HiddenFault = { kind: "open-core", cable: first, role: "L" };
    expect(standingFaults([fault], new Map([[first, 1999]]))).toEqual([fault]);
    expect(standingFaults([fault], new Map([[first, 2000]]))).toEqual([]);
    expect(standingFaults([fault], new Map([["socket-7.a~way-1.c", 5000]]))).toEqual([fault]);
  });
});
