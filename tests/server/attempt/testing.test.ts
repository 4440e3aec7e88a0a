import { describe, expect, it } from "vitest";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import type { CableId } from "../../../shared/board/ids.ts";
import { deadSequence } from "../dead-sequence.ts";
import { act, allDeadTests, at, atTest, nulled, probe, record, test, way } from "./dead-tests.ts";
import { TestBench } from "../test-bench.ts";

describe("the meter", () => {
  it("reads the network of what is wired, by how the ends were left", async () => {
    const bench = await atTest();
    await nulled(bench);
    expect(await probe(bench, "way-1.a.L", "way-1.b.L")).toEqual({ shows: "ohm", resistanceOhm: 0 });
    await act(bench, { what: "ring-ends", state: "released" });
    const shows = test(bench).meter.shows;
    expect(shows).toMatchObject({ shows: "ohm" });
    // BS EN 60228: 7.41 milliohm per metre of 2.5 mm², by the lengths of the cables round the ring.
    const ring = bench.attempt().cables.filter(({ id }) => !id.includes("socket-3"));
    const lengthM = ring.reduce((sumM, { lengthM = 0 }) => sumM + lengthM, 0);
    expect(shows).toMatchObject({ resistanceOhm: expect.closeTo((7.41 * lengthM) / 1000, 1) as number });
  });

  it("cannot be nulled with the tips apart, and has no two ends where one cable is in", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.atRest();
    await bench.does("go-to-step", { step: "test" });
    expect(await bench.refusal("meter-act", { what: "null" })).toBe("tips-apart");
    expect(await bench.refusal("meter-act", { what: "ring-ends", state: "released" })).toBe("no-two-ends");
    expect(await bench.refusal("meter-act", { what: "probe", probe: "red", at: at("socket-9.a.L") })).toBe(
      "no-such-place",
    );
  });

  it("sees a hidden fault that nothing sent to the screen tells of", async () => {
    const fault: HiddenFault = { kind: "open-core", cable: "socket-1.b~socket-2.a", role: "N" };
    const bench = await atTest({ hiddenFaults: [fault] });
    await nulled(bench);
    await act(bench, { what: "ring-ends", state: "released" });
    // Through the loads that are still in there is a way round the broken core.
    expect(await probe(bench, "way-1.a.N", "way-1.b.N")).toMatchObject({ shows: "ohm" });
    for (const { station, part } of test(bench).parts)
      await act(bench, { what: "part", station, part, isIn: false });
    expect(await probe(bench, "way-1.a.N", "way-1.b.N")).toEqual({ shows: "over-range" });
    expect(await probe(bench, "way-1.a.L", "way-1.b.L")).toMatchObject({ shows: "ohm" });
    const { test: shown } = bench.attempt();
    await bench.does("go-to-step", { step: "wire" });
    for (const sent of [JSON.stringify(bench.view()), JSON.stringify({ ...shown, meter: 0 })])
      expect(sent).not.toMatch(/open-core|hiddenFaults/);
  });

  it("asks for its key before it tests insulation, and lets go of it when anything is moved", async () => {
    const bench = await atTest();
    await act(bench, { what: "dial", to: "insulation" });
    expect(await probe(bench, "way-1.a.L", "way-1.a.E")).toEqual({ shows: "press" });
    await act(bench, { what: "press" });
    expect(test(bench).meter.shows).toEqual({ shows: "over-range" });
    await act(bench, { what: "probe", probe: "red", at: at("way-1.a.N") });
    expect(test(bench).meter.shows).toEqual({ shows: "press" });
  });

  it("is as it was left after a power cut, its record too", async () => {
    const bench = await atTest();
    await nulled(bench);
    await act(bench, { what: "ring-ends", state: "released" });
    await probe(bench, "way-1.a.L", "way-1.b.L");
    await record(bench, "ring-step-1");
    const before = test(bench);
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(test(after)).toEqual(before);
    expect(before.slots.filter(({ recorded }) => recorded)).toHaveLength(1);
  });
});

describe("the record", () => {
  it("asks for what the task's circuit asks for, whatever is wired", async () => {
    const wired = test(await atTest()).slots.map(({ id }) => id);
    const bench = await (await new TestBench().start()).isWiring();
    await bench.does("go-to-step", { step: "test" });
    expect(test(bench).slots.map(({ id }) => id)).toEqual(wired);
    expect(wired).toContain("ring-step-1 N");
    expect(wired).toContain("insulation L-E");
  });

  it("tells a reading at the wrong points from one written down wrongly", async () => {
    const bench = await atTest();
    await nulled(bench);
    await act(bench, { what: "ring-ends", state: "released" });
    await probe(bench, "way-1.a.L", "way-1.b.L");
    await bench.does("record-reading", { test: "ring-step-1", way, resistanceOhm: 7.77, judged: "pass" });
    await probe(bench, "way-1.a.L", "way-1.b.N");
    await record(bench, "ring-step-1");
    const { slots, others } = test(bench);
    expect(slots.find(({ id }) => id === "ring-step-1 L")?.recorded?.check).toBe("misread");
    expect(others.map(({ check }) => check)).toEqual(["wrong-points"]);
    expect(bench.events("reading-recorded")[0]?.content).toMatchObject({
      resistanceOhm: 7.77,
      shown: { resistanceOhm: expect.any(Number) as number },
      taken: { ringEnds: "released", nulledOhm: 0.08 },
    });
  });

  it("takes nothing that the meter does not show, and nothing that is not written down", async () => {
    const bench = await atTest();
    const reading = { test: "ring-step-1", way, judged: "pass" } as const;
    expect(await bench.refusal("record-reading", { ...reading, resistanceOhm: 0.4 })).toBe("no-reading");
    await nulled(bench);
    await probe(bench, "way-1.a.L", "way-1.b.L");
    expect(await bench.refusal("record-reading", reading)).toBe("nothing-written");
    expect(await bench.refusal("record-reading", { ...reading, test: "insulation", isOverRange: true })).toBe(
      "no-reading",
    );
  });

  it("is of before once a lead was moved: it has to be taken again", async () => {
    const bench = await atTest();
    await nulled(bench);
    await probe(bench, "way-1.a.L", "way-1.b.L");
    await record(bench, "ring-step-1");
    bench.port.byHand({ out: ["socket-1.c.L~socket-3.a.L" as never] });
    bench.clock.advance(500);
    expect(test(bench).pastCount).toBe(1);
    expect(test(bench).slots.every(({ recorded }) => !recorded)).toBe(true);
  });

  it("says what a reading should come to once it is asked, with its working", async () => {
    const bench = await atTest();
    await bench.does("ask-expected", { test: "ring-step-1", of: "L" });
    const slot = test(bench).slots.find(({ id }) => id === "ring-step-1 L");
    expect(slot?.expected).toMatchObject({ by: "sum", ring: [{ of: "L", csaMm2: 2.5 }] });
    expect(await bench.refusal("ask-expected", { test: "ring-step-1", of: "nothing" })).toBe(
      "not-a-question",
    );
  });
});

describe("the step while the work waits to be checked", () => {
  it.each(["practice", "assessed"] as const)(
    "is still on the screen with its record, and nothing can be done there: %s",
    async (mode) => {
      const bench = await atTest({ mode });
      await act(bench, { what: "dial", to: "insulation" });
      await bench.does("ready", {});
      expect(bench.attempt()).toMatchObject({ step: "test", status: "ready" });
      expect(bench.attempt().test?.meter.dial).toBe("insulation");
      expect(await bench.refusal("meter-act", { what: "dial", to: "low-ohms" })).toBe("frozen");
      await bench.does("hand-in", {});
      expect(bench.attempt().test).toBeUndefined();
    },
  );
});

describe("switching on", () => {
  it("is refused with the reason until every dead test is on record, passes and holds", async () => {
    const bench = await atTest();
    expect(await bench.refusal("energise", { way })).toBe("tests-missing");
    await allDeadTests(bench);
    expect(test(bench).slots.map(({ recorded }) => recorded?.check)).toEqual(
      test(bench).slots.map(() => "right"),
    );
    await act(bench, { what: "link", between: "L-E" });
    expect(await bench.refusal("energise", { way })).toBe("put-back-first");
    await act(bench, { what: "link", between: null });
    await probe(bench, "way-1.a.L", "way-1.a.N");
    await act(bench, { what: "press" });
    await bench.does("record-reading", { test: "insulation", way, insulationMegohm: 3, judged: "pass" });
    expect(await bench.refusal("energise", { way })).toBe("tests-doubtful");
    await bench.does("record-reading", { test: "insulation", way, isOverRange: true, judged: "fail" });
    expect(await bench.refusal("energise", { way })).toBe("tests-failed");
    await record(bench, "insulation");
    await bench.does("energise", { way });
    expect(test(bench).supply).toBe("holds");
  });

  it("brings the live tests: Zs and the fault current, the RCD, and no dead test on a live circuit", async () => {
    const bench = await atTest();
    await allDeadTests(bench);
    await act(bench, { what: "dial", to: "loop" });
    expect(await probe(bench, "socket-2.a.L", "socket-2.a.E")).toEqual({ shows: "dead" });
    await bench.does("energise", { way });
    const { shows } = test(bench).meter;
    expect(shows).toMatchObject({ shows: "loop" });
    const impedanceOhm = shows.shows === "loop" ? shows.impedanceOhm : 0;
    expect(impedanceOhm).toBeGreaterThan(0.35);
    await bench.does("record-live-reading", { test: "zs", way, impedanceOhm, judged: "pass" });
    expect(test(bench).liveSlots[0]?.recorded).toMatchObject({ check: "right", value: { impedanceOhm } });
    await act(bench, { what: "dial", to: "low-ohms" });
    expect(test(bench).meter.shows).toEqual({ shows: "live" });
    expect(await bench.refusal("meter-act", { what: "ring-ends", state: "released" })).toBe(
      "switch-off-first",
    );
    await act(bench, { what: "dial", to: "rcd" });
    await act(bench, { what: "rcd-multiple", multiple: 0.5 });
    await act(bench, { what: "press" });
    expect(test(bench)).toMatchObject({ supply: "holds", meter: { shows: { shows: "no-trip" } } });
    await bench.does("record-live-reading", { test: "rcd-half", way, isNoTrip: true, judged: "pass" });
    await act(bench, { what: "rcd-multiple", multiple: 1 });
    await act(bench, { what: "press" });
    expect(test(bench)).toMatchObject({ supply: "rcd-trips", meter: { shows: { shows: "trip" } } });
    await act(bench, { what: "dial", to: "voltage" });
    expect(test(bench).meter.shows).toEqual({ shows: "volts", voltageV: 0 });
    await bench.does("energise", { way });
    expect(test(bench).meter.shows).toEqual({ shows: "volts", voltageV: 230 });
    await bench.does("switch-off", { way });
    expect(test(bench).meter.shows).toEqual({ shows: "volts", voltageV: 0 });
  });

  it.each([{ isExistingCircuit: false }, { isExistingCircuit: true }])(
    "asks that the circuit is made dead again before hands or dead tests go in: $isExistingCircuit",
    async ({ isExistingCircuit }) => {
      const bench = await atTest({ isExistingCircuit });
      await allDeadTests(bench);
      expect(
        bench
          .attempt()
          .steps.map(({ step }) => step)
          .includes("make-dead"),
      ).toBe(isExistingCircuit);
      await bench.does("energise", { way });
      await bench.does("switch-off", { way });
      expect(test(bench)).toMatchObject({ supply: "off", isUnproved: true });
      expect(bench.attempt().say.key).toBe("say.test-unproved");
      await act(bench, { what: "dial", to: "low-ohms" });
      expect(await probe(bench, "way-1.a.L", "way-1.b.L")).toEqual({ shows: "unproved" });
      await act(bench, { what: "dial", to: "insulation" });
      for (const hands of [{ what: "link", between: "L-E" }, { what: "press" }] as const)
        expect(await bench.refusal("meter-act", hands)).toBe("dead-again-first");
      expect(await bench.refusal("record-reading", { test: "polarity", way, judged: "pass" })).toBe(
        "dead-again-first",
      );
      expect(await bench.refusal("pull", { what: "cable", cable: "socket-1.c~socket-3.a" as CableId })).toBe(
        "dead-again-first",
      );

      await bench.does("go-to-step", { step: "make-dead" });
      // The way was switched off at its own key: the picture shows it so, and nothing of before counts.
      expect(bench.attempt().deadState?.breakers[0]).toMatchObject({ isOn: false, isLocked: false });
      expect(bench.attempt().dead.filter(({ isDone }) => isDone).length).toBeLessThan(3);
      const rest = deadSequence.filter(({ what }) => what !== "breaker");
      for (const done of rest.slice(0, -1)) await bench.does("dead-act", done);
      expect(bench.attempt().dead.every(({ isDone }) => isDone)).toBe(false);
      await bench.does("dead-act", rest.at(-1)!);
      expect(bench.attempt()).toMatchObject({ say: { key: "say.dead-again" }, deadState: { then: "test" } });
      await bench.does("go-to-step", { step: "test" });
      expect(test(bench)).not.toHaveProperty("isUnproved");
      expect(await probe(bench, "way-1.a.L", "way-1.a.E")).toEqual({ shows: "press" });
      await act(bench, { what: "press" });
      expect(test(bench).meter.shows).toEqual({ shows: "over-range" });
      await act(bench, { what: "link", between: "L-E" });

      // The lock off again, and it is no longer proved.
      await bench.does("dead-act", { what: "padlock", breaker: 1 });
      expect(await bench.refusal("meter-act", { what: "link", between: null })).toBe("dead-again-first");
      expect(await bench.refusal("dead-act", { what: "breaker", breaker: 1 })).toBe("energise-at-test");
    },
  );

  it("counts 230 V on the picture as live, and the breaker there switches the way off", async () => {
    const bench = await atTest();
    await allDeadTests(bench);
    await bench.does("energise", { way });
    await bench.does("go-to-step", { step: "make-dead" });
    await bench.does("dead-act", { what: "test", between: "L-N" });
    expect(bench.attempt().deadState).toMatchObject({ reading: { voltageV: 230 }, missed: "live" });
    for (const done of deadSequence) await bench.does("dead-act", done);
    await bench.does("go-to-step", { step: "test" });
    expect(test(bench)).toMatchObject({ supply: "off" });
    expect(test(bench)).not.toHaveProperty("isUnproved");
  });

  it("is asked again after a power cut", async () => {
    const bench = await atTest();
    await allDeadTests(bench);
    await bench.does("energise", { way });
    await bench.does("switch-off", { way });
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(test(after).isUnproved).toBe(true);
    expect(await after.refusal("meter-act", { what: "link", between: "L-E" })).toBe("dead-again-first");
  });

  it("is made dead again in assessed work when the learner says so, not while it is on", async () => {
    const bench = await atTest({ mode: "assessed" });
    await allDeadTests(bench);
    await bench.does("energise", { way });
    await bench.does("go-to-step", { step: "make-dead" });
    expect(bench.attempt().dead).toEqual([]);
    expect(await bench.refusal("declare-dead", {})).toBe("switch-off-first");
    await bench.does("switch-off", { way });
    await bench.does("declare-dead", {});
    expect(bench.attempt().step).toBe("test");
    await act(bench, { what: "link", between: "L-E" });
    await bench.does("energise", { way });
    await bench.does("switch-off", { way });
    expect(await bench.refusal("meter-act", { what: "link", between: null })).toBe("dead-again-first");
  });

  it("ends when a lead is moved", async () => {
    const bench = await atTest();
    await allDeadTests(bench);
    await bench.does("energise", { way });
    bench.port.byHand({ out: ["socket-1.c.L~socket-3.a.L" as never] });
    bench.clock.advance(500);
    expect(test(bench).supply).toBe("off");
    expect(await bench.refusal("energise", { way })).toBe("tests-missing");
  });
});

describe("assessed work", () => {
  it("shows readings and what was written down, and nothing that is said of them", async () => {
    const bench = await atTest({ mode: "assessed" });
    await nulled(bench);
    await probe(bench, "way-1.a.L", "way-1.b.N");
    await bench
      .does("record-reading", { test: "ring-step-1", way, resistanceOhm: 7.77, judged: "pass" })
      .catch(() => undefined);
    await record(bench, "ring-step-1");
    expect(test(bench).others).not.toEqual([]);
    expect(JSON.stringify(test(bench))).not.toMatch(/"check"|"expected"/);
    expect(await bench.refusal("ask-expected", { test: "ring-step-1", of: "L" })).toBe("not-in-assessed");
  });

  it("switches on by what is on record and what the learner said of it alone", async () => {
    const bench = await atTest({ mode: "assessed" });
    await allDeadTests(bench);
    await act(bench, { what: "link", between: "L-E" });
    await bench.does("energise", { way });
    // The link was left in: line is on earth.
    expect(test(bench).supply).toBe("device-trips");
  });
});
