import { describe, expect, it } from "vitest";
import type { CableId } from "../../../shared/board/ids.ts";
import type { LoadView } from "../../../shared/protocol/load-view.ts";
import { TestBench } from "../test-bench.ts";
import { allDeadTests, atTest, way } from "./dead-tests.ts";

const load = (bench: TestBench): LoadView => bench.attempt().load!;
const switches = (bench: TestBench, appliance: string, isOn = true): Promise<void> =>
  bench.does("switch-appliance", { appliance, isOn });
const goTo = (bench: TestBench, toS: number): Promise<void> => bench.does("move-load-clock", { toS });

/** The ring of the small board with its spur, tested, switched on and at the step Load. */
async function atLoad(options: Parameters<typeof atTest>[0] = {}): Promise<TestBench> {
  const bench = await atTest(options);
  await allDeadTests(bench);
  await bench.does("energise", { way });
  await bench.does("go-to-step", { step: "load" });
  return bench;
}

/**
 * Where the conductors of a cable settle. Heat balance of IEC 60287 for a cable that its tabulated current brings to
 * 70 °C in air of 30 °C (BS 7671 Table 4D5), copper's 0.00393 per kelvin (IEC 60228), solved by hand for T.
 */
function settledC(currentA: number, ratingA: number): number {
  const alpha = 0.00393;
  const k = (40 * (currentA / ratingA) ** 2) / (1 + 50 * alpha);
  return (30 + k * (1 - 20 * alpha)) / (1 - k * alpha);
}

describe("the step Load", () => {
  it("opens once the circuit is on, and tells that it is off once a lead was moved", async () => {
    const bench = await atTest();
    expect(await bench.refusal("go-to-step", { step: "load" })).toBe("energise-first");
    await allDeadTests(bench);
    await bench.does("energise", { way });
    await bench.does("go-to-step", { step: "load" });
    await switches(bench, "socket-1/kettle");
    expect(load(bench)).toMatchObject({ isLive: true, nowS: 0 });
    const pull = { what: "cable", cable: "socket-1.a~way-1.a" as CableId } as const;
    expect(await bench.refusal("pull", pull)).toBe("switch-off-first");
    // Hands on a board cannot be refused: a lead that comes out ends it.
    bench.port.byHand({ out: ["socket-1.a.L~way-1.a.L" as never] });
    bench.clock.advance(500);
    expect(load(bench)).toMatchObject({ isLive: false, cables: [], devices: [] });
    expect(bench.attempt().say.key).toBe("say.load-off");
    expect(await bench.refusal("switch-appliance", { appliance: "socket-1/kettle", isOn: true })).toBe(
      "energise-first",
    );
  });

  it("shares what a socket outlet takes over the two legs by their lengths, the other way round at the other end", async () => {
    const bench = await atLoad();
    const lengthM = (id: string) => bench.attempt().cables.find((one) => one.id === id)!.lengthM!;
    const [one, between, two] = ["socket-1.a~way-1.a", "socket-1.b~socket-2.a", "socket-2.b~way-1.b"].map(
      lengthM,
    );
    const allM = one! + between! + two!;
    await switches(bench, "socket-1/kettle");
    // The current divider: what flows into a leg is as the length of the other. 3 kW at 230 V is 13.04 A.
    const [near] = load(bench).legs;
    const atOne = 100 * (1 - one! / allM);
    expect(near!.currentA[0] + near!.currentA[1]).toBeCloseTo(13, 0);
    expect(
      Math.abs(Math.max(near!.firstPercent, 100 - near!.firstPercent) - Math.max(atOne, 100 - atOne)),
    ).toBeLessThan(1.5);
    await switches(bench, "socket-1/kettle", false);
    await switches(bench, "socket-2/kettle");
    const atTwo = 100 * (two! / allM);
    const moved = load(bench).legs[0]!;
    expect(
      Math.min(Math.abs(moved.firstPercent - atTwo), Math.abs(100 - moved.firstPercent - atTwo)),
    ).toBeLessThan(1.5);
    expect(Math.sign(moved.firstPercent - 50)).toBe(-Math.sign(near!.firstPercent - 50));
  });

  it("runs kettle and heater for two hours on a ring of 2.5 mm²: nothing opens, and all stays within 70 °C", async () => {
    const bench = await atLoad();
    await switches(bench, "socket-1/kettle");
    await switches(bench, "socket-2/heater");
    await goTo(bench, 7200);
    const { devices, facts, heat, cables, legs } = load(bench);
    expect(devices).toMatchObject([{ station: way, ratingA: 32, state: "closed" }]);
    expect(facts).toMatchObject({ isUnprotected: false, hottest: { state: "within" } });
    expect(facts!.first).toBeUndefined();
    expect(Math.min(...legs[0]!.currentA)).toBeGreaterThan(5);
    const { currentA, ratingA } = cables.find(({ id }) => id === heat!.cable)!;
    expect(heat!.earlyC.at(-1)).toBeCloseTo(settledC(currentA, ratingA!), 0);
    expect(heat!.lateC.at(-1)).toBeCloseTo(settledC(currentA, ratingA!), 0);
    expect(heat!.earlyC[10]).toBeGreaterThanOrEqual(heat!.lateC[10]!);
  });

  it("shows legs of 1.5 mm² overheat while the B32 holds", async () => {
    const bench = await atLoad({ csaMm2: 1.5 });
    for (const one of ["socket-1/kettle", "socket-1/heater", "socket-2/fan-heater"])
      await switches(bench, one);
    await goTo(bench, 7200);
    const { devices, facts, heat } = load(bench);
    expect(devices).toMatchObject([{ station: way, state: "closed" }]);
    expect(facts!.isUnprotected).toBe(true);
    expect(["beyond", "fault"]).toContain(facts!.hottest!.state);
    expect(Math.max(...heat!.earlyC)).toBeGreaterThan(70);
    expect(bench.attempt().cables.find(({ id }) => id === heat!.cable)!.carries).toMatchObject({
      isBelow: true,
    });
  });

  it("opens the device within the conventional hour of its standard at 1.45 times its rating", async () => {
    const bench = await atLoad();
    // Four times 13 A is 52 A, over 1.45 × 32 A = 46.4 A (BS EN 60898-1, test b).
    for (const one of ["socket-1/kettle", "socket-1/heater", "socket-2/kettle", "socket-2/heater"])
      await switches(bench, one);
    const { first } = load(bench).facts!;
    expect(first).toMatchObject({ kind: "device", id: way });
    expect(first!.latestS).toBeLessThanOrEqual(3600);
    await goTo(bench, 7200);
    expect(load(bench).devices).toMatchObject([{ state: "open", currentA: 0 }]);
  });

  it("can be stepped back; what is switched then ends what was switched later", async () => {
    const bench = await atLoad();
    await goTo(bench, 1200);
    await switches(bench, "socket-1/kettle");
    await goTo(bench, 600);
    const isOn = () => load(bench).appliances.find(({ id }) => id === "socket-1/kettle")!.isOn;
    expect(isOn()).toBe(false);
    expect(load(bench).devices[0]!.currentA).toBe(0);
    await goTo(bench, 1200);
    expect(isOn()).toBe(true);
    await goTo(bench, 600);
    await switches(bench, "socket-2/lamp");
    await goTo(bench, 1200);
    expect(isOn()).toBe(false);
    await bench.does("clear-loads", {});
    expect(load(bench)).toMatchObject({ nowS: 0 });
    expect(load(bench).appliances.some((one) => one.isOn)).toBe(false);
  });

  it("has no more plugs at a socket outlet than it has gangs, and knows no other appliance", async () => {
    const bench = await atLoad();
    for (const one of ["socket-1/kettle", "socket-1/heater"]) await switches(bench, one);
    expect(await bench.refusal("switch-appliance", { appliance: "socket-1/lamp", isOn: true })).toBe(
      "no-free-outlet",
    );
    expect(await bench.refusal("switch-appliance", { appliance: "way-1/kettle", isOn: true })).toBe(
      "no-such-place",
    );
  });

  it("is as it was left after a power cut", async () => {
    const bench = await atLoad();
    await switches(bench, "socket-1/kettle");
    await goTo(bench, 600);
    await bench.does("choose-load-cable", { cable: "socket-1.c~socket-3.a" as CableId });
    expect(load(bench).heat!.cable).toBe("socket-1.c~socket-3.a");
    const before = load(bench);
    expect(before.appliances.filter(({ isOn }) => isOn).map(({ id }) => id)).toEqual(["socket-1/kettle"]);
    expect(before.devices[0]!.currentA).toBeGreaterThan(10);
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(after.attempt().step).toBe("load");
    expect(load(after)).toEqual(before);
  });

  it("shows currents in assessed work, and nothing that judges them", async () => {
    const bench = await atLoad({ mode: "assessed" });
    for (const one of ["socket-1/kettle", "socket-1/heater"]) await switches(bench, one);
    const shown = load(bench);
    expect(shown.heat).toBeUndefined();
    expect(shown.facts).toBeUndefined();
    expect(shown.devices[0]!.currentA).toBeGreaterThan(20);
    for (const cable of shown.cables) expect(cable).not.toHaveProperty("ratingA");
    for (const cable of bench.attempt().cables) expect(cable).not.toHaveProperty("carries");
    expect(await bench.refusal("choose-load-cable", { cable: "socket-1.c~socket-3.a" as CableId })).toBe(
      "not-in-assessed",
    );
  });
});
