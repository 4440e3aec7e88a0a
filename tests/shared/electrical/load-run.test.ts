import { describe, expect, it } from "vitest";
import { cableId, type EntryId, type StationId } from "../../../shared/board/ids.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import { breakerBand } from "../../../shared/electrical/device-band.ts";
import { fuseBand } from "../../../shared/electrical/fuse-band.ts";
import { asBuilt } from "../../../shared/electrical/hidden-faults.ts";
import { runLoads } from "../../../shared/electrical/load-run.ts";
import type { LoadRunInput } from "../../../shared/electrical/load-run-input.ts";
import { RunLimitsError } from "../../../shared/electrical/run-limits.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { terse, type Terse } from "./terse-wiring.ts";

const b = (deviceRatingA: number) =>
  ({ deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA, rcdMa: 30 }) as const;
const cable = (from: string, to: string) => cableId(from as EntryId, to as EntryId);

/** All loads on from the start for two hours. */
function run(
  parts: Terse,
  powers: Record<string, number>,
  options: { stepS?: number; faults?: HiddenFault[] } = {},
) {
  const wiring = terse(parts);
  const loads = Object.entries(powers).map(([station, powerW]) => ({
    id: station,
    station: station as StationId,
    powerW,
  }));
  return runLoads({
    wiring: { ...wiring, supply: { zeOhm: 0.35 } },
    built: asBuilt(copperOf(wiring), options.faults),
    loads,
    programme: loads.map(({ id }) => ({ atS: 0, load: id, isOn: true })),
    durationS: 7200,
    stepS: options.stepS ?? 30,
  });
}

describe("a compliant radial at full load", () => {
  const radial = { settings: { "way-1": b(20) }, cables: ["way-1.a socket-1.a 2.5 10"] };
  const full = run(radial, { "socket-1": 4600 });

  it("runs for ever without anything that acts, below 70 °C", () => {
    expect(full.facts.events).toEqual([]);
    expect(full.facts.first).toBeUndefined();
    expect(full.facts.hottest!.earlyC).toBeLessThan(70);
    expect(full.facts.hottest!.state).toBe("within");
  });

  it("is read off every half minute from start to end", () => {
    expect(full.timeS).toHaveLength(241);
    expect(full.timeS.at(-1)).toBe(7200);
    for (const series of full.cables) {
      expect(series.currentA).toHaveLength(241);
      expect(series.earlyC).toHaveLength(241);
      expect(series.lateC).toHaveLength(241);
    }
    for (const { mayBeOpen, mustBeOpen } of full.devices) {
      expect(mayBeOpen).toHaveLength(241);
      expect(mustBeOpen).toHaveLength(241);
    }
  });
});

describe("a little more than 1.45 In", () => {
  // BS EN 60898-1 tests a and b: it may go sooner, it must have gone within the hour.
  const radial = { settings: { "way-1": b(20) }, cables: ["way-1.a socket-1.a 2.5 10 m:A"] };
  const over = run(radial, { "socket-1": 31.2 * 230 });

  it("ends by the device within the hour", () => {
    const { first } = over.facts;
    expect(over.devices[0]!.currentA[0]).toBeGreaterThan(29);
    expect(first).toMatchObject({ kind: "device", id: "way-1" });
    expect(first!.earliestS).toBeLessThan(first!.latestS!);
    expect(first!.latestS).toBeLessThanOrEqual(3600);
  });

  it("passes 70 °C at the soonest after a while, and need not where the device opens first", () => {
    const passed = over.facts.events.find(({ kind }) => kind === "long-life")!;
    expect(passed.id).toBe(cable("way-1.a", "socket-1.a"));
    expect(passed.earliestS).toBeGreaterThan(0);
    expect(passed.latestS).toBeUndefined();
  });

  it("leaves the cable dead and cooling once the device has opened", () => {
    const series = over.cables[0]!;
    expect(series.currentA.at(-1)).toBe(0);
    expect(series.earlyC.at(-1)).toBeLessThan(40);
    expect(over.devices[0]!.mayBeOpen.indexOf(true)).toBeLessThan(over.devices[0]!.mustBeOpen.indexOf(true));
  });
});

describe("up to 1.45 In", () => {
  // BS 7671 433.1.1 and BS EN 60898-1: accepted for up to an hour, not for two.
  const forMinutes = (minutes: number) => {
    const wiring = terse({ settings: { "way-1": b(20) }, cables: ["way-1.a socket-1.a 2.5 10 m:A"] });
    return runLoads({
      wiring,
      built: asBuilt(copperOf(wiring)),
      loads: [{ id: "heater", station: "socket-1" as StationId, powerW: 30 * 230 }],
      programme: [
        { atS: 0, load: "heater", isOn: true },
        { atS: 60 * minutes, load: "heater", isOn: false },
      ],
      durationS: 7200,
      stepS: 30,
    });
  };

  it("for 50 minutes is warm but accepted", () => {
    const { hottest } = forMinutes(50).facts;
    expect(hottest!.earlyC).toBeGreaterThan(70);
    expect(hottest!.earlyC).toBeLessThan(160);
    expect(hottest!.state).toBe("accepted");
  });

  it("for two hours is beyond what is accepted", () => {
    expect(forMinutes(120).facts.hottest!.state).toBe("beyond");
  });
});

describe("two heaters of over 3 kW behind a 13 A fuse", () => {
  const parts = {
    settings: { "way-1": b(32), "fcu-1": { fuseRatingA: 13 } },
    cables: ["way-1.a fcu-1.a 2.5 10", "fcu-1.c socket-1.a 2.5 5", "socket-1.b socket-2.a 2.5 5"],
  };
  const heaters = run(parts, { "socket-1": 3200, "socket-2": 3000 });

  it("blow the fuse between the times of its gates, and the breaker holds", () => {
    const { first, events } = heaters.facts;
    expect(first).toMatchObject({ kind: "fuse", id: "fcu-1" });
    const currentA = heaters.devices.find(({ station }) => station === "fcu-1")!.currentA[0]!;
    expect(currentA).toBeGreaterThan(24.7);
    const opening = fuseBand("BS 1362", 13).opening(currentA);
    expect(first!.earliestS).toBeCloseTo(opening.earliestS, 6);
    expect(first!.latestS).toBeCloseTo(opening.latestS, 6);
    expect(events.some(({ kind }) => kind === "device")).toBe(false);
  });

  it("blow it at the same times however finely the series is read", () => {
    const { first } = run(parts, { "socket-1": 3200, "socket-2": 3000 }, { stepS: 7 }).facts;
    expect(first!.earliestS).toBeCloseTo(heaters.facts.first!.earliestS, 6);
    expect(first!.latestS).toBeCloseTo(heaters.facts.first!.latestS!, 6);
  });

  it("on a rating without gates are timed by an estimate, and that is said", () => {
    const five = { ...parts, settings: { ...parts.settings, "fcu-1": { fuseRatingA: 5 } } };
    const over = run(five, { "socket-1": 3000 }).facts;
    expect(over.estimated).toEqual(["fcu-1"]);
    expect(over.first).toMatchObject({ kind: "fuse", id: "fcu-1" });
    expect(over.first!.latestS).toBeLessThanOrEqual(1800);
    expect(run(five, { "socket-1": 1000 }).facts.estimated).toEqual([]);
    expect(heaters.facts.estimated).toEqual([]);
  });

  it("behind a fuse of no stated rating cannot be timed, and that is said", () => {
    const unsaid = { ...parts, settings: { "way-1": b(32) } };
    expect(run(unsaid, { "socket-1": 3000 }).facts.untimed).toEqual(["fcu-1"]);
  });
});

describe("a cable that nothing protects", () => {
  // Copper melts at 1,084 °C (IEC 60949 and any handbook of physics).
  const bare = { settings: { "way-1": { rcdMa: 0 } }, cables: ["way-1.a socket-1.a 1 20"] };
  const shorted: HiddenFault[] = [
    { kind: "low-insulation", cable: "socket-1.a~way-1.a", between: ["L", "N"], insulationMegohm: 0 },
  ];
  const { facts, cables } = run(bare, {}, { faults: shorted });

  it("parts where copper melts, and carries nothing from there on", () => {
    const melted = facts.events.find(({ kind }) => kind === "melted")!;
    expect(melted.id).toBe(cable("way-1.a", "socket-1.a"));
    expect(melted.latestS).toBeGreaterThan(melted.earliestS);
    expect(facts.hottest!.earlyC).toBeCloseTo(1084, 6);
    expect(facts.hottest!.state).toBe("fault");
    expect(cables[0]!.currentA[0]).toBeGreaterThan(100);
    expect(cables[0]!.currentA.at(-1)).toBe(0);
    expect(cables[0]!.earlyC.at(-1)).toBeLessThan(100);
  });
});

describe("a run that could not end or be drawn", () => {
  const input = (change: Partial<LoadRunInput>) => {
    const wiring = terse({ cables: ["way-1.a socket-1.a 2.5 10"] });
    const load = { id: "kettle", station: "socket-1" as StationId, powerW: 2000 };
    const built = asBuilt(copperOf(wiring));
    return { wiring, built, loads: [load], programme: [], durationS: 60, stepS: 1, ...change };
  };
  it.each([
    { durationS: Infinity },
    { durationS: 86_401 },
    { durationS: -1 },
    { durationS: NaN },
    { stepS: 0 },
    { stepS: NaN },
    { durationS: 86_400, stepS: 1 },
    { programme: [{ atS: NaN, load: "kettle", isOn: true }] },
    { loads: [{ id: "kettle", station: "socket-1" as StationId, powerW: 0 }] },
  ])("is refused: %o", (change) => {
    expect(() => runLoads(input(change))).toThrow(RunLimitsError);
  });
  it("is none of a day read every minute", () => {
    expect(runLoads(input({ durationS: 86_400, stepS: 60 })).timeS).toHaveLength(1441);
  });
});

describe("a ring", () => {
  const ring = {
    settings: { "way-1": b(32) },
    cables: ["way-1.a socket-1.a 2.5 10", "socket-1.b socket-2.a 2.5 20", "socket-2.b way-1.b 2.5 10"],
  };

  it("shares a load at a quarter of its length three to one", () => {
    const { rings } = run(ring, { "socket-1": 2300 });
    expect(rings).toHaveLength(1);
    expect(rings[0]!.firstShare[0]).toBeCloseTo(0.75, 3);
    expect(rings[0]!.legA[0][0]! / rings[0]!.legA[1][0]!).toBeCloseTo(3, 1);
  });

  it("carries it all by one leg where a core is broken", () => {
    const faults: HiddenFault[] = [{ kind: "open-core", cable: "socket-2.b~way-1.b", role: "L" }];
    expect(run(ring, { "socket-1": 2300 }, { faults }).rings[0]!.firstShare[0]).toBeCloseTo(1, 9);
  });
});

describe("loads that come and go", () => {
  it("give current only while they are on", () => {
    const wiring = terse({ settings: { "way-1": b(16) }, cables: ["way-1.a socket-1.a 2.5 10"] });
    const { cables } = runLoads({
      wiring,
      built: asBuilt(copperOf(wiring)),
      loads: [{ id: "kettle", station: "socket-1" as StationId, powerW: 2300 }],
      programme: [
        { atS: 60, load: "kettle", isOn: true },
        { atS: 240, load: "kettle", isOn: false },
      ],
      durationS: 600,
      stepS: 60,
    });
    const { currentA, earlyC } = cables[0]!;
    expect(currentA.map((each) => Math.round(each))).toEqual([0, 10, 10, 10, 0, 0, 0, 0, 0, 0, 0]);
    expect(earlyC[4]).toBeGreaterThan(earlyC[1]!);
    expect(earlyC[10]).toBeLessThan(earlyC[4]!);
  });
});

describe("a fault that is energised", () => {
  const radial = { settings: { "way-1": b(32) }, cables: ["way-1.a socket-1.a 2.5 10"] };
  const between = (roles: ["L", "N" | "E"]): HiddenFault[] => [
    { kind: "low-insulation", cable: "socket-1.a~way-1.a", between: roles, insulationMegohm: 0 },
  ];

  it("from line to neutral opens the breaker within a tenth of a second", () => {
    const { first } = run(radial, {}, { faults: between(["L", "N"]) }).facts;
    expect(first).toMatchObject({ kind: "device", id: "way-1", earliestS: 0 });
    expect(first!.latestS).toBeLessThanOrEqual(breakerBand("B", 32)!.opening(600).latestS);
  });

  it("of a leak to earth opens the RCD within 300 ms, and the breaker would not have seen it", () => {
    const faults: HiddenFault[] = [
      { kind: "low-insulation", cable: "socket-1.a~way-1.a", between: ["L", "E"], insulationMegohm: 0.005 },
    ];
    const { first } = run(radial, {}, { faults }).facts;
    expect(first).toMatchObject({ kind: "rcd", id: "way-1", earliestS: 0 });
    expect(first!.latestS).toBeCloseTo(0.3, 9);
    const without = { ...radial, settings: { "way-1": { ...b(32), rcdMa: 0 } } };
    expect(run(without, {}, { faults }).facts.first).toBeUndefined();
  });
});
