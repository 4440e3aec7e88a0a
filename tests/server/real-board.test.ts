import { describe, expect, it } from "vitest";
import { cableId, type ContactId, type EntryId } from "../../shared/board/ids.ts";
import type { TestView } from "../../shared/protocol/test-view.ts";
import { act, allDeadTests, way } from "./attempt/dead-tests.ts";
import { deadSequence } from "./dead-sequence.ts";
import { boardWithProbes } from "./small-board.ts";
import { firstSpur, leadsOf, rightCables, TestBench } from "./test-bench.ts";

const id = (contact: string): ContactId => contact as ContactId;
const entry = (text: string): EntryId => text as EntryId;
const test = (bench: TestBench): TestView => bench.attempt().test!;

/** A hand puts a probe down and holds it there. */
function touch(bench: TestBench, probe: "red" | "black", at: string | null): void {
  bench.port.touches(at as ContactId | null, probe);
  bench.clock.advance(500);
}

/** A lead is plugged by hand, and the size of the cable said on the screen, as on a board whose plugs have no codes. */
async function wire(bench: TestBench, cables: readonly (readonly [string, string])[]): Promise<void> {
  for (const [from, to] of cables) {
    bench.port.byHand({ in: leadsOf(from, to) });
    bench.atRest();
    const subject = cableId(entry(from), entry(to));
    await bench.does("declare", { subject, key: "csaMm2", value: 2.5 });
  }
}

/** A real board with test faces and two probe leads, its ring wired by hand, at the step Test. */
async function atRealTest(mode: "practice" | "assessed" = "practice"): Promise<TestBench> {
  const parts = { board: boardWithProbes({ hasFronts: true }) };
  const bench = await new TestBench({ isSimulated: false, parts }).start();
  await bench.isWiring(mode);
  await wire(bench, rightCables);
  await bench.does("go-to-step", { step: "test" });
  return bench;
}

describe("the probe leads of a real board", () => {
  it("put the meter's probes down where they are sensed, and lift them", async () => {
    const bench = await atRealTest();
    await act(bench, { what: "dial", to: "low-ohms" });
    expect(test(bench)).toMatchObject({ probeLeads: { red: [], black: [] } });
    touch(bench, "red", "socket-1.front.L");
    touch(bench, "black", "socket-2.front.L");
    expect(test(bench)).toMatchObject({
      probeLeads: { red: ["socket-1.front.L"], black: ["socket-2.front.L"] },
      meter: { red: "socket-1.front.L", black: "socket-2.front.L", shows: { shows: "ohm" } },
    });
    touch(bench, "red", null);
    expect(test(bench)).toMatchObject({ probeLeads: { red: [] }, meter: { red: null } });
    expect(test(bench).meter.shows).toEqual({ shows: "open" });
    // What was sensed is in the log by the bench, never by the learner.
    expect(bench.events("meter-acted").map(({ author }) => author?.by)).toEqual([
      "learner",
      "bench",
      "bench",
      "bench",
    ]);
  });

  it("held together are the place to null them", async () => {
    const bench = await atRealTest();
    await act(bench, { what: "dial", to: "low-ohms" });
    touch(bench, "red", "other-probe");
    expect(test(bench).probeLeads).toEqual({ red: "other-probe", black: "other-probe" });
    await act(bench, { what: "null" });
    expect(test(bench).meter).toMatchObject({ isNulled: true, shows: { shows: "ohm", resistanceOhm: 0 } });
  });

  it("on a contact with a lead in it read nothing until the learner has said which of its ends is meant", async () => {
    const bench = await atRealTest();
    await act(bench, { what: "dial", to: "low-ohms" });
    touch(bench, "black", "socket-1.front.L");
    touch(bench, "red", "way-1.a.L");
    // The lead is one wire: from the board alone its two ends cannot be told apart, and between them lie metres of cable.
    expect(test(bench)).toMatchObject({
      probeLeads: { red: ["socket-1.a.L", "way-1.a.L"] },
      meter: { red: null, shows: { shows: "open" } },
    });
    await act(bench, { what: "probe", probe: "red", at: id("way-1.a.L") });
    const far = test(bench).meter.shows;
    await act(bench, { what: "probe", probe: "red", at: id("socket-1.a.L") });
    const near = test(bench).meter.shows;
    expect([far.shows, near.shows]).toEqual(["ohm", "ohm"]);
    expect(far).not.toEqual(near);
    // Held still, it stays what was said, whatever else moves.
    touch(bench, "black", "socket-2.front.L");
    expect(test(bench).meter.red).toBe("socket-1.a.L");
  });

  it("are there for who comes to the step with a probe down, and never move what was put elsewhere by touch", async () => {
    const bench = await atRealTest();
    await bench.does("go-to-step", { step: "wire" });
    touch(bench, "red", "socket-3.front.L");
    await bench.does("go-to-step", { step: "test" });
    expect(test(bench).meter.red).toBe("socket-3.front.L");
    await act(bench, { what: "probe", probe: "red", at: id("way-1.a.N") });
    touch(bench, "red", null);
    expect(test(bench).meter.red).toBe("way-1.a.N");
  });

  it("stay where they were while the board cannot be read", async () => {
    const bench = await atRealTest();
    await act(bench, { what: "dial", to: "low-ohms" });
    touch(bench, "red", "socket-1.front.L");
    const rowCount = bench.events("meter-acted").length;
    bench.port.cutsChain();
    expect(test(bench).meter.red).toBe("socket-1.front.L");
    expect(bench.events("meter-acted")).toHaveLength(rowCount);
  });

  it("move nothing while the work waits to be checked, and are no finding of the board", async () => {
    const bench = await atRealTest("assessed");
    touch(bench, "red", "socket-1.front.L");
    const before = bench.attempt();
    expect(before.test?.meter.red).toBe("socket-1.front.L");
    expect(before.cables).toHaveLength(rightCables.length);
    await bench.does("ready", {});
    touch(bench, "red", "socket-2.front.L");
    expect(bench.attempt().test?.meter.red).toBe("socket-1.front.L");
  });
});

describe("a whole task on a real board", () => {
  it("is made dead, wired by hand, tested with the probe leads, switched on, loaded and handed in", async () => {
    const asFound = { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never;
    const bench = await new TestBench({
      isSimulated: false,
      parts: { board: boardWithProbes({ hasFronts: true }) },
      scenarios: [firstSpur({ isExistingCircuit: true, asFound })],
    }).start();
    const [found, ...added] = rightCables;
    bench.port.byHand({ in: leadsOf(...found!) });
    bench.atRest();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    for (const done of deadSequence) await bench.does("dead-act", done);
    await bench.does("go-to-step", { step: "wire" });
    // The screen moves no lead here, and says so.
    const [from, to] = added[0]!;
    expect(await bench.refusal("plug-cable", { entryA: entry(from), entryB: entry(to), csaMm2: 2.5 })).toBe(
      "real-board",
    );
    expect(await bench.refusal("probe", { probe: "red", at: id("socket-1.a.L") })).toBe("real-board");
    await wire(bench, added);

    await bench.does("go-to-step", { step: "test" });
    await allDeadTests(bench, {
      nulls: async () => {
        await act(bench, { what: "dial", to: "low-ohms" });
        touch(bench, "red", "other-probe");
        await act(bench, { what: "null" });
        touch(bench, "red", null);
      },
      puts: async (_, red, black) => {
        for (const [lead, contact] of [
          ["red", red],
          ["black", black],
        ] as const) {
          touch(bench, lead, contact);
          // Of a lead's two ends the learner says which.
          if (!contact.includes(".front.")) await act(bench, { what: "probe", probe: lead, at: id(contact) });
        }
      },
      socketSide: "front",
      insulationAt: "socket-2.front",
    });
    const checks = test(bench).slots.map(({ id: slot, recorded }) => [slot, recorded?.check]);
    expect(checks.filter(([, check]) => check !== "right")).toEqual([]);

    await bench.does("energise", { way });
    await bench.does("go-to-step", { step: "load" });
    await bench.does("switch-appliance", { appliance: "socket-1/kettle", isOn: true });
    expect(bench.attempt().load).toMatchObject({ isLive: true });
    await bench.does("switch-off", { way });
    await bench.does("hand-in", {});
    expect(bench.attempt()).toMatchObject({
      status: "handed-in",
      verdict: { proposal: "met", findings: [] },
    });
    // Not one lead was moved by the screen.
    expect(
      bench.port.requests.filter(({ type }) =>
        ["plug", "plug-cable", "pull", "set-leads", "probe"].includes(type),
      ),
    ).toEqual([]);
  });
});
