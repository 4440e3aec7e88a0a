import { describe, expect, it } from "vitest";
import type { AttemptEvent } from "../../../server/attempt/attempt-events.ts";
import type { AttemptState } from "../../../server/attempt/attempt-state.ts";
import { loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { reduce } from "../../../server/attempt/reduce.ts";
import { isMadeDead, stepStates } from "../../../server/attempt/steps.ts";
import { deadSteps } from "../../../shared/protocol/attempt-words.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { packVersion } from "../../../shared/rules/pack-version.ts";
import { deadSequence } from "../dead-sequence.ts";
import { firstSpur, leadsOf, TestBench } from "../test-bench.ts";

const existing = {
  isExistingCircuit: true,
  asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] },
};

const start = {
  scenario: "first-spur",
  scenarioHash: "",
  scenarioRevision: 1,
  board: "small",
  boardHash: "",
  rulePackVersion: "1",
  softwareVersion: "0.1.0",
  learner: null,
  kind: "first",
  mode: "practice",
  isExistingCircuit: false,
} as const;

async function atMakeDead(mode: "practice" | "assessed" = "practice"): Promise<TestBench> {
  const bench = await new TestBench({ scenarios: [firstSpur(existing as never)] }).start();
  await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode });
  await bench.does("accept-caution", {});
  return bench;
}

const stateOf = (bench: TestBench, step: string): string | undefined =>
  bench.attempt().steps.find((one) => one.step === step)?.state;

describe("before anything else", () => {
  it("the caution is read: no step, no lead and no size before it", async () => {
    const bench = await new TestBench().start();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(bench.attempt()).toMatchObject({ step: "caution", say: { key: "say.caution" } });
    expect(await bench.refusal("go-to-step", { step: "wire" })).toBe("caution-first");
    expect(
      await bench.refusal("plug-cable", { entryA: "way-1.a" as never, entryB: "socket-1.a" as never }),
    ).toBe("caution-first");
    expect(bench.port.requests).toEqual([]);
  });
});

describe("an existing circuit", () => {
  it("is made dead before a lead is touched, and that opens wiring and testing", async () => {
    const bench = await atMakeDead();
    expect(bench.attempt().step).toBe("make-dead");
    for (const step of ["wire", "hand-in"]) expect(stateOf(bench, step)).toBe("locked");
    expect(await bench.refusal("go-to-step", { step: "wire" })).toBe("make-dead-first");
    expect(
      await bench.refusal("plug", { contactA: "way-1.a.L" as never, contactB: "socket-1.a.L" as never }),
    ).toBe("make-dead-first");
    for (const act of deadSequence) await bench.does("dead-act", act);
    expect(bench.attempt().dead).toEqual(deadSteps.map((step) => ({ step, isDone: true })));
    for (const step of ["wire", "hand-in"]) expect(stateOf(bench, step)).toBe("open");
    expect(bench.events("dead-acted").map(({ content }) => content["act"])).toEqual([...deadSequence]);
  });

  it("is not dead while the tester reads 230 V, and says so", async () => {
    const bench = await atMakeDead();
    const onWrongBreaker = deadSequence.map((act) => ("breaker" in act ? { ...act, breaker: 2 } : act));
    for (const act of onWrongBreaker.slice(0, 5)) await bench.does("dead-act", act);
    expect(bench.attempt().deadState).toMatchObject({
      reading: { at: "L-N", voltageV: 230 },
      missed: "live",
    });
    expect(bench.attempt().dead.filter(({ isDone }) => isDone)).toHaveLength(1);
    expect(stateOf(bench, "wire")).toBe("locked");
  });

  it("is live again when its breaker goes back on, and wiring is locked again", async () => {
    const bench = await atMakeDead();
    for (const act of deadSequence) await bench.does("dead-act", act);
    expect(await bench.refusal("dead-act", { what: "breaker", breaker: 1 })).toBe("dead-locked");
    await bench.does("dead-act", { what: "padlock", breaker: 1 });
    await bench.does("dead-act", { what: "breaker", breaker: 1 });
    expect(bench.attempt().dead.filter(({ isDone }) => isDone)).toHaveLength(1);
    expect(stateOf(bench, "wire")).toBe("locked");
  });

  it("has a chart that names one of three breakers, told once it is read", async () => {
    const bench = await atMakeDead();
    expect(bench.attempt().deadState?.chart).toBeUndefined();
    await bench.does("dead-act", { what: "chart" });
    const chart = bench.attempt().deadState?.chart ?? [];
    expect(chart.map(({ breaker, isOfTask }) => [breaker, isOfTask])).toEqual([
      [1, true],
      [2, false],
      [3, false],
    ]);
    expect(new Set(chart.map(({ feeds }) => feeds)).size).toBe(3);
  });

  it("is dead in assessed work when the learner says so: no list, no order, no reason is told; the log knows", async () => {
    const bench = await atMakeDead("assessed");
    await bench.does("dead-act", { what: "test", between: "L-N" });
    expect(bench.attempt().dead).toEqual([]);
    expect(bench.attempt().deadState).toMatchObject({ reading: { at: "L-N", voltageV: 230 } });
    expect(bench.attempt().deadState).not.toHaveProperty("missed");
    expect(stateOf(bench, "wire")).toBe("locked");
    await bench.does("declare-dead", {});
    expect(bench.attempt().step).toBe("plan");
    expect(stateOf(bench, "wire")).toBe("open");
    expect(bench.events("dead-acted")).toHaveLength(1);
    expect(bench.events("dead-declared")).toHaveLength(1);
  });

  it("is not dead in practice because the learner says so", async () => {
    const bench = await atMakeDead();
    expect(await bench.refusal("declare-dead", {})).toBe("make-dead-first");
  });

  it("counts as it was written before it was acted on a picture", () => {
    const events: AttemptEvent[] = [
      { type: "attempt-started", content: { ...start, isExistingCircuit: true } },
      { type: "caution-accepted", content: {} },
      ...deadSteps.map((step) => ({ type: "dead-step" as const, content: { step, isOutOfOrder: false } })),
    ];
    const after = (count: number) =>
      events
        .slice(0, count)
        .reduce<AttemptState | undefined>((state, event) => reduce(state, "a", event), undefined);
    expect(isMadeDead(after(events.length)!)).toBe(true);
    expect(isMadeDead(after(events.length - 1)!)).toBe(false);
  });

  it("is matched as found with a live list before the work begins", async () => {
    const bench = await atMakeDead();
    bench.port.byHand({ in: ["socket-2.a.L~socket-3.a.L" as never] });
    expect(bench.attempt().say).toEqual({ key: "say.clear-board", facts: { cableCount: 1 } });
    await bench.does("pull", { what: "all" });
    expect(bench.attempt().say).toEqual({ key: "say.as-found", facts: { done: 0, total: 1 } });
    await bench.does("match-as-found", {});
    expect(bench.attempt().asFound).toEqual([{ cable: "socket-1.a~way-1.a", isIn: true }]);
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5, isAsFound: true }]);
    expect(bench.attempt().say).toEqual({ key: "say.make-dead", facts: {} });
  });

  it("sends on once all eight steps count, and not before", async () => {
    const bench = await atMakeDead();
    await bench.does("pull", { what: "all" });
    await bench.does("match-as-found", {});
    for (const act of deadSequence.slice(1)) await bench.does("dead-act", act);
    expect(bench.attempt().say).toEqual({ key: "say.make-dead", facts: {} });
    await bench.does("dead-act", { what: "padlock", breaker: 1 });
    await bench.does("dead-act", { what: "breaker", breaker: 1 });
    for (const act of deadSequence) await bench.does("dead-act", act);
    expect(bench.attempt().say).toEqual({ key: "say.dead", facts: {} });
  });
});

describe("the step Load", () => {
  it("is locked while the circuit is off, and whoever goes there is told why and stays where they are", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    expect(stateOf(bench, "load")).toBe("locked");
    const before = bench.rows().length;
    expect(await bench.refusal("go-to-step", { step: "load" })).toBe("energise-first");
    expect(bench.attempt().step).toBe("wire");
    expect(bench.rows()).toHaveLength(before);
  });

  it("of a log from when it was not there yet is a circuit that is off", () => {
    const steps = [
      ["caution-accepted", {}],
      ["step-entered", { step: "load" }],
    ] as const;
    const after = [["attempt-started", start] as const, ...steps].reduce<AttemptState | undefined>(
      (state, [type, content]) => reduce(state, "a", { type, content } as AttemptEvent),
      undefined,
    );
    expect(stepStates(after!, 0).filter(({ state }) => state === "now")).toEqual([
      { step: "load", state: "now" },
    ]);
    expect(after!.meter.supply).toBe("off");
  });
});

describe("ready for check", () => {
  /** A learner who waits, with one cable in. */
  const waiting = async (options: ConstructorParameters<typeof TestBench>[0] = {}): Promise<TestBench> => {
    const bench = await (await new TestBench(options).start()).isWiring();
    bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
    bench.clock.advance(250);
    await bench.does("ready", {});
    return bench;
  };
  const banners = (bench: TestBench): string[] => bench.view().banners.map(({ kind }) => kind);

  it("freezes the board as it is, and the log holds the snapshot", async () => {
    const bench = await waiting();
    expect(bench.attempt()).toMatchObject({ status: "ready", say: { key: "say.ready" } });
    expect(await bench.refusal("pull", { what: "all" })).toBe("frozen");
    expect(
      await bench.refusal("declare", { subject: "socket-1.a~way-1.a" as never, key: "csaMm2", value: 1.5 }),
    ).toBe("frozen");
    expect(await bench.refusal("answer-plan", { question: "csaMm2", answer: 2.5 })).toBe("frozen");
    const joins = ["E", "L", "N"].map((role) => `socket-1.a.${role}~way-1.a.${role}`);
    expect(bench.events("ready")).toMatchObject([
      { content: { full: { joins }, verdict: { proposal: "not-yet" } } },
    ]);
  });

  it("stays so whichever step is looked at, and over a restart", async () => {
    const bench = await waiting();
    for (const step of ["hand-in", "plan", "wire", "hand-in"] as const) {
      await bench.does("go-to-step", { step });
      expect(bench.attempt()).toMatchObject({ status: "ready", step, say: { key: "say.ready" } });
    }
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(after.attempt()).toMatchObject({ status: "ready", step: "hand-in" });
    expect(after.events("ready-ended")).toEqual([]);
  });

  it("ends when it is taken back, and the work goes on", async () => {
    const bench = await waiting();
    await bench.does("take-back", {});
    await bench.does("take-back", {});
    expect(bench.events("ready-ended").map(({ content }) => content)).toEqual([{ reason: "taken-back" }]);
    expect(bench.attempt()).toMatchObject({ status: "open", say: { key: "say.size" } });
    expect(banners(bench)).not.toContain("ready-lost");
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    await bench.does("ready", {});
    expect(bench.attempt().status).toBe("ready");
  });

  it.each(["practice", "assessed"] as const)(
    "ends when the board is changed by hand, and the screen says so until the work goes on: %s",
    async (mode) => {
      const bench = await new TestBench({ isSimulated: false }).start();
      await bench.isWiring(mode);
      bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
      bench.clock.advance(250);
      await bench.does("ready", {});
      bench.port.byHand({ out: leadsOf("way-1.a", "socket-1.a").slice(0, 1) });
      bench.clock.advance(250);
      expect(bench.attempt().status).toBe("open");
      expect(banners(bench)).toContain("ready-lost");
      expect(bench.events().slice(-2)).toMatchObject([
        { type: "sensed" },
        { type: "ready-ended", content: { reason: "board-changed" } },
      ]);
      await bench.does("go-to-step", { step: "hand-in" });
      expect(banners(bench)).not.toContain("ready-lost");
    },
  );

  it("does not end by a plug that moves for a moment, nor by a line of the board that goes bad and comes back", async () => {
    const bench = await waiting();
    const [core = ""] = leadsOf("way-1.a", "socket-1.a");
    bench.port.byHand({ out: [core as never] });
    bench.port.byHand({ in: [core as never] });
    bench.clock.advance(250);
    const contact = "socket-1.a.L" as never;
    bench.port.breaks(contact, "stuck-low");
    bench.clock.advance(1000);
    expect(bench.attempt().unknown).toContain(contact);
    expect(bench.attempt().status).toBe("ready");
    bench.port.breaks(contact, null);
    bench.clock.advance(1000);
    expect(bench.attempt().status).toBe("ready");
    expect(bench.events("ready-ended")).toEqual([]);
  });

  it("ends when the board was changed while the bench was off", async () => {
    const bench = await waiting({ isSimulated: false });
    const folder = bench.folder;
    bench.cutPower();
    const after = await new TestBench({ folder, isSimulated: false }).start();
    expect(after.attempt().status).toBe("open");
    expect(banners(after)).toContain("ready-lost");
    expect(after.events("ready-ended")).toHaveLength(1);
  });

  it("of a log from before a look at a step left it alone is read as it was then", () => {
    const full = { joins: [], codes: [], unknown: [] };
    const started = {
      scenario: "first-spur",
      scenarioRevision: 1,
      scenarioHash: "",
      board: "small",
      boardHash: "",
      rulePackVersion: packVersion,
      softwareVersion: "0.1.0",
      learner: null,
      kind: "first",
      mode: "practice",
      isExistingCircuit: false,
    };
    const verdict = judge({ version: 1, stations: [], cables: [] } as never);
    const rows = [
      ["attempt-started", started],
      ["caution-accepted", {}],
      ["step-entered", { step: "wire" }],
      ["ready", { full, wiringHash: "", verdict }],
      ["step-entered", { step: "wire" }],
    ].map(([type, content]) => ({ type, bytes: Buffer.from(JSON.stringify(content)) }));
    expect(loadAttempt("one", rows.slice(0, 4) as never)?.status).toBe("ready");
    expect(loadAttempt("one", rows as never)?.status).toBe("open");
  });
});

describe("a board that is not at rest", () => {
  it("is neither ready nor handed in: what is kept is never a plug half in", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(await bench.refusal("hand-in", {})).toBe("unsettled");
    bench.clock.advance(120);
    expect(await bench.refusal("ready", {})).toBe("unsettled");
    bench.atRest();
    expect(await bench.refusal("hand-in", {})).toBe("done");
  });

  it("is not handed in before the lead that went in last, however slow the scanner", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.atRest();
    bench.port.exchangeMs = 500;
    const [contactA, contactB] = ["socket-1.b.L", "socket-2.a.L"] as [never, never];
    await bench.does("plug", { contactA, contactB });
    let refusedCount = 0;
    while ((await bench.refusal("hand-in", {})) === "unsettled") {
      refusedCount += 1;
      bench.clock.advance(100);
    }
    expect(refusedCount).toBeGreaterThan(5);
    const [handedIn] = bench.events("handed-in");
    expect(handedIn?.content["full"]).toMatchObject({
      joins: expect.arrayContaining(["socket-1.b.L~socket-2.a.L"]) as string[],
    });
  });
});

describe("work that is handed in", () => {
  it("can no longer be changed, and shows its verdict in practice even when the board is cleared", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("hand-in", {});
    bench.port.byHand({ out: leadsOf("way-1.a", "socket-1.a") });
    bench.atRest();
    const attempt = bench.attempt();
    expect(attempt).toMatchObject({ status: "handed-in", step: "hand-in", say: { key: "say.handed-in" } });
    expect(attempt.verdict).toMatchObject({ proposal: "not-yet", isCurrent: true });
    expect(attempt.cables).toHaveLength(1);
    for (const [name, command] of [
      ["ask-verdict", {}],
      ["ask-hint", {}],
      ["ready", {}],
      ["hand-in", {}],
      ["go-to-step", { step: "wire" }],
      ["pull", { what: "all" }],
    ] as const)
      expect(await bench.refusal(name, command as never)).toBe("handed-in");
  });

  it("makes room for the next attempt", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    expect(await bench.refusal("start-attempt", { scenario: "first-spur", mode: "practice" })).toBe(
      "attempt-open",
    );
    await bench.does("hand-in", {});
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice", kind: "retake" });
    expect(bench.attempt()).toMatchObject({ kind: "retake", status: "open", step: "caution" });
  });
});

describe("checking one's own work", () => {
  it("counts a try for each board that is asked about, not for each tap", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("ask-verdict", {});
    await bench.does("ask-verdict", {});
    expect(bench.attempt().tries).toBe(1);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(bench.attempt().verdict).toMatchObject({ isCurrent: false });
    await bench.does("ask-verdict", {});
    expect(bench.attempt()).toMatchObject({ tries: 2, verdict: { isCurrent: true } });
  });

  it("waits for the board to be at rest, then answers by itself", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(await bench.refusal("ask-verdict", {})).toBe("done");
    expect(bench.attempt().verdict).toMatchObject({ isHeld: true, findings: [] });
    expect(bench.events("verdict-asked")).toHaveLength(0);
    bench.atRest();
    expect(bench.attempt().verdict).toMatchObject({ isHeld: false, isCurrent: true });
    expect(bench.attempt().verdict?.findings.length).toBeGreaterThan(0);
    expect(bench.events("verdict-asked")).toHaveLength(1);
  });

  it("shows findings all the time where the trainer has set it so", async () => {
    const bench = await (await new TestBench({ findings: "live" }).start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(bench.attempt().verdict).toMatchObject({ isHeld: true, findings: [] });
    bench.atRest();
    expect(bench.attempt().verdict?.findings.length).toBeGreaterThan(0);
    bench.port.byHand({ in: [leadsOf("socket-1.b", "socket-2.a")[0]!] });
    expect(bench.attempt().verdict).toMatchObject({ isHeld: true, findings: [] });
  });
});

describe("hints", () => {
  it("come in three steps, a nudge, the rule and the place, and no more", async () => {
    const bench = await new TestBench({ scenarios: [withoutHints()] }).start();
    await bench.isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("pull", {
      what: "lead",
      contactA: "way-1.a.E" as never,
      contactB: "socket-1.a.E" as never,
    });
    for (let count = 0; count < 3; count += 1) await bench.does("ask-hint", {});
    const [nudge, rule, place] = bench.attempt().hints.shown;
    expect(bench.attempt().hints).toMatchObject({ used: 3, left: 0 });
    expect(nudge?.en).not.toMatch(/socket|earth/i);
    expect(rule?.en).not.toBe(nudge?.en);
    expect(place?.en).toMatch(/^Take out the cable .*socket outlet 1.* and put it back, core to core\./);
    expect(place?.pl).not.toBe(place?.en);
    expect(await bench.refusal("ask-hint", {})).toBe("no-hints");
    expect(bench.events("hint-given").map(({ content }) => content["number"])).toEqual([1, 2, 3]);
  });
});

describe("hints where something is wrong", () => {
  it("are about that, whatever the task's own hints are about", async () => {
    const kit = firstSpur();
    expect(kit.scenario.hints?.length).toBe(3);
    const bench = await (await new TestBench({ scenarios: [kit] }).start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("pull", {
      what: "lead",
      contactA: "way-1.a.E" as never,
      contactB: "socket-1.a.E" as never,
    });
    for (let count = 0; count < 3; count += 1) await bench.does("ask-hint", {});
    const shown = bench.attempt().hints.shown.map(({ en }) => en);
    expect(shown[1]).toMatch(/earth/i);
    expect(shown[2]).toMatch(/socket outlet 1/i);
    for (const own of kit.scenario.hints ?? []) expect(shown).not.toContain(own.en);
  });

  it("are the task's own where nothing is wrong yet", async () => {
    const kit = firstSpur();
    const bench = await (await new TestBench({ scenarios: [kit] }).start()).isWiring();
    await bench.does("ask-hint", {});
    expect(bench.attempt().hints.shown).toEqual([kit.scenario.hints?.[0]]);
  });
});

describe("leads of before", () => {
  const old = "socket-2.a.L~socket-3.a.L" as never;

  it("are cleared first: the line says so in every step until they are out, and not of new ones", async () => {
    const bench = await new TestBench().start();
    bench.port.byHand({ in: [old] });
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    const line = { key: "say.clear-board", facts: { cableCount: 1 } };
    expect(bench.attempt().say).toEqual(line);
    await bench.does("go-to-step", { step: "wire" });
    expect(bench.attempt().say).toEqual(line);
    await bench.does("pull", { what: "all" });
    bench.clock.advance(300);
    expect(bench.attempt().say.key).toBe("say.wire");
    bench.port.byHand({ in: [old] });
    bench.clock.advance(300);
    expect(bench.attempt().say.key).not.toBe("say.clear-board");
  });
});

describe("a guest's work", () => {
  it("ends when the guest signs out: the next guest finds none of it, and the log keeps it", async () => {
    const bench = await new TestBench().start();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    await bench.does("go-to-step", { step: "wire" });
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("sign-out", {});
    expect(bench.view().isWorkKept).toBeUndefined();
    await bench.does("sign-in", { by: "guest" });
    expect(bench.view().attempt).toBeNull();
    expect(bench.events("attempt-left").map(({ content }) => content["reason"])).toEqual(["left"]);
  });
});

describe("somebody's work that waits for a check", () => {
  it("is not ended by another's start unless they were asked", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.does("ready", {});
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-03" });
    const start = { scenario: "first-spur", mode: "practice" } as const;
    expect(await bench.refusal("start-attempt", start)).toBe("others-work-waiting");
    expect(bench.events("attempt-left")).toEqual([]);
    await bench.does("start-attempt", { ...start, endsWaiting: true });
    expect(bench.events("attempt-left").map(({ content }) => content["reason"])).toEqual(["another-started"]);
  });
});

function withoutHints() {
  const kit = firstSpur();
  const { hints: _hints, ...scenario } = kit.scenario;
  return { ...kit, scenario };
}
