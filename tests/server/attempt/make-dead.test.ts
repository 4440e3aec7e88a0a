import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  afterDeadAct,
  countedSteps,
  deadRefusal,
  type DeadState,
  untouched,
} from "../../../server/attempt/make-dead.ts";
import { deadSteps } from "../../../shared/protocol/attempt-words.ts";
import type { DeadAct } from "../../../shared/protocol/make-dead.schema.ts";

const chart: DeadAct = { what: "chart" };
const off = (breaker: number): DeadAct => ({ what: "breaker", breaker });
const lock = (breaker: number): DeadAct => ({ what: "padlock", breaker });
const prove: DeadAct = { what: "proving-unit" };
const test = (between: "L-N" | "L-E" | "N-E"): DeadAct => ({ what: "test", between });
const tests = [test("L-N"), test("L-E"), test("N-E")];

/** Acts on breaker 2's circuit; an act that is refused changes nothing. */
const after = (...acts: DeadAct[]): DeadState =>
  acts.reduce(
    (circuit, act) => (deadRefusal(circuit, act) ? circuit : afterDeadAct(circuit, act, 2)),
    untouched,
  );
const counted = (...acts: DeadAct[]): string[] => countedSteps(after(...acts), 2);

// Safe isolation as trained on HSE GS38: identify, isolate, lock off, prove the tester, test, prove it again.
describe("a circuit made dead, acted out", () => {
  it("counts every step of the sequence, each done in its turn", () => {
    expect(counted(chart, off(2), lock(2), prove, ...tests, prove)).toEqual(deadSteps);
  });

  it("lets the three tests come in any order among themselves", () => {
    expect(counted(chart, off(2), lock(2), prove, ...tests.toReversed(), prove)).toEqual(deadSteps);
  });

  it("is not dead by another breaker: the tester reads 230 V, and nothing of it counts", () => {
    const circuit = after(chart, off(1), lock(1), prove, test("L-N"));
    expect(circuit.reading).toEqual({ at: "L-N", voltageV: 230 });
    expect(circuit.missed).toBe("live");
    expect(countedSteps(circuit, 2)).toEqual(["identify"]);
  });

  it.each([
    { between: "L-N", voltageV: 230 },
    { between: "L-E", voltageV: 230 },
    { between: "N-E", voltageV: 0 },
  ] as const)("reads $voltageV V between $between while the breaker is on", ({ between, voltageV }) => {
    expect(after(test(between)).reading).toEqual({ at: between, voltageV });
    expect(after(chart, off(2), test(between)).reading).toEqual({ at: between, voltageV: 0 });
  });

  it("does not count 0 V between N and E on a live circuit", () => {
    expect(counted(chart, test("N-E"))).toEqual(["identify"]);
  });

  it("does not count a breaker whose circuit was not looked up, until it is", () => {
    expect(after(off(2)).missed).toBe("chart-first");
    expect(counted(off(2))).toEqual([]);
    expect(counted(off(2), chart)).toEqual(["identify", "isolate"]);
  });

  it("does not count a tester proved before the lock, nor a test with a tester not proved", () => {
    expect(after(chart, off(2), prove).missed).toBe("lock-first");
    expect(after(chart, off(2), lock(2), test("L-N")).missed).toBe("prove-first");
    expect(counted(chart, off(2), prove, lock(2), ...tests)).toEqual(["identify", "isolate", "lock-off"]);
  });

  it("does not count the proof after until all three tests are made", () => {
    expect(counted(chart, off(2), lock(2), prove, test("L-N"), prove)).not.toContain("prove-tester-again");
  });

  it("loses what was tested when the lock comes off", () => {
    expect(counted(chart, off(2), lock(2), prove, ...tests, prove, lock(2))).toEqual(["identify", "isolate"]);
    expect(counted(chart, off(2), lock(2), prove, ...tests, prove, lock(2), off(2))).toEqual(["identify"]);
  });

  it("keeps a breaker that is locked off, and a padlock from a breaker that is on", () => {
    expect(deadRefusal(after(chart, off(2), lock(2)), off(2))).toBe("dead-locked");
    expect(deadRefusal(after(chart), lock(2))).toBe("dead-lock-on");
    expect(deadRefusal(after(off(2)), lock(2))).toBeUndefined();
  });

  it("never shows 0 V between L and N while the circuit's breaker is on, whatever was done", () => {
    const acts = fc.array(
      fc.oneof(
        fc.constantFrom(chart, prove, ...tests),
        fc.integer({ min: 1, max: 3 }).map(off),
        fc.integer({ min: 1, max: 3 }).map(lock),
      ),
    );
    fc.assert(
      fc.property(acts, (done) => {
        const before = after(...done);
        const { reading } = after(...done, test("L-N"));
        expect(reading?.voltageV).toBe(before.off.includes(2) ? 0 : 230);
        const steps = countedSteps(before, 2);
        // Nothing counts without all that comes before it, the three tests aside.
        const place = (step: string): number =>
          step.startsWith("test-") ? 4 : deadSteps.indexOf(step as never);
        for (const step of steps)
          for (const earlier of deadSteps) if (place(earlier) < place(step)) expect(steps).toContain(earlier);
      }),
    );
  });
});
