import { describe, expect, it } from "vitest";
import { ruleIds, weights } from "../../shared/rules/rule.ts";
import { judge } from "../../shared/rules/judge.ts";
import { wordFinding } from "../../shared/rules/wording/word-finding.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { allDeadTests } from "./attempt/dead-tests.ts";
import { deadSequence } from "./dead-sequence.ts";
import { firstSpur } from "./test-bench.ts";
import { Screen, testServer } from "./test-server.ts";

/** A whole attempt with every mistake the small board allows, on a screen that keeps what it is sent. */
async function attemptOf(
  mode: "assessed" | "practice",
  cables: [string, string, number][],
  leads: [string, string][] = [],
) {
  const { bench, url } = await testServer({ scenarios: [existing] });
  const screen = new Screen(url);
  await screen.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await screen.does("start-attempt", { scenario: "first-spur", mode });
  await screen.does("accept-caution");
  // Two slips first: a test on a live circuit, and a tester proved too early.
  for (const act of [deadSequence[4], deadSequence[3], ...deadSequence]) await screen.does("dead-act", act);
  if (mode === "assessed") await screen.does("declare-dead");
  for (const [question, answer] of [
    ["designCurrentA", 3],
    ["csaMm2", 1.5],
  ] as const)
    await screen.send("answer-plan", { question, answer });
  // Assessed work begins on what was found there; then all of it is taken out.
  await screen.does("match-as-found");
  bench.atRest();
  await screen.does("go-to-step", { step: "wire" });
  await screen.does("pull", { what: "all" });
  bench.atRest();
  for (const [entryA, entryB, csaMm2] of cables) {
    await screen.does("plug-cable", { entryA, entryB, csaMm2 });
    bench.atRest();
  }
  for (const [contactA, contactB] of leads) await screen.does("plug", { contactA, contactB });
  bench.clock.advance(3000);
  const asked = [await screen.send("ask-verdict", {}), await screen.send("ask-hint", {})];
  await testIt(screen, mode);
  await screen.does("ready");
  await screen.does("take-back");
  await screen.does("go-to-step", { step: "wire" });
  const last = await screen.sees(({ attempt }) => attempt?.status === "open" && attempt.step === "wire");
  await screen.does("hand-in");
  await screen.sees(({ attempt }) => attempt?.status === "handed-in");
  const wiring = bench.bench.core.work.run!.judged().wiring;
  return { screen, asked, last, wiring };
}

/** A reading taken and written down wrongly, what it should be asked for, and a try to switch on. */
async function testIt(screen: Screen, mode: "assessed" | "practice"): Promise<void> {
  await screen.does("go-to-step", { step: "test" });
  await screen.does("meter-act", { what: "dial", to: "insulation" });
  for (const [probe, at] of [
    ["red", "way-1.a.L"],
    ["black", "socket-2.a.L"],
  ] as const)
    await screen.does("meter-act", { what: "probe", probe, at });
  await screen.does("meter-act", { what: "press" });
  const reading = { test: "insulation", way: "way-1", insulationMegohm: 7.77, judged: "pass" };
  await screen.does("record-reading", reading);
  const expected = await screen.send("ask-expected", { test: "ring-step-1", of: "L" });
  expect(expected.ok).toBe(mode === "practice");
  await screen.send("energise", { way: "way-1" as never });
}

const existing = firstSpur({
  isExistingCircuit: true,
  asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never,
});

const mistakes: [string, string, number][] = [
  ["way-1.a", "socket-2.a", 1.5],
  ["socket-2.b", "socket-3.a", 1.5],
  ["socket-1.b", "socket-1.c", 1.5],
];
const shorts: [string, string][] = [
  ["way-1.b.L", "socket-1.a.N"],
  ["way-1.b.N", "socket-1.a.E"],
];
const right: [string, string, number][] = [
  ["way-1.a", "socket-1.a", 2.5],
  ["socket-1.b", "socket-2.a", 2.5],
  ["socket-2.b", "way-1.b", 2.5],
  ["socket-1.c", "socket-3.a", 2.5],
];

/** The stripped scenario is the same for everybody: what stands in it tells nothing of an attempt. */
const withoutScenario = (frame: string): string =>
  frame
    .replaceAll(JSON.stringify(existing.stripped), "{}")
    // Some tests of the record have the name of a rule; they are asked for whatever is wired.
    .replaceAll(/"(polarity socket-\d|rcd-(half|one|five) way-1|rcdMultiple)"/g, '""')
    .replaceAll(/"test":"(polarity|rcd-(half|one|five))"/g, "");

/** Words that only a verdict, a hint or a checked plan could have put there. */
function tellTales(view: string, wiring: Awaited<ReturnType<typeof attemptOf>>["wiring"]): string[] {
  const verdict = judge(wiring);
  const sentences = verdict.findings.flatMap((finding) =>
    (["en", "pl"] as const).flatMap((language) => {
      const { title, what, why, remedy } = wordFinding(finding, wiring, language);
      return [title, what, why, remedy];
    }),
  );
  const quoted = [...ruleIds, ...weights].map((word) => `"${word}`);
  const keys = [
    "share",
    "lengthM",
    "designA",
    "ratingA",
    "deviceA",
    "bars",
    "result",
    "isRight",
    "missed",
    "isAsFound",
    "carries",
    "isBelow",
    "neededA",
    "run",
    "worstPath",
    "check",
    "expected",
    "expectedOhm",
    "limitOhm",
    "mend",
    "followCount",
  ];
  return [...sentences, ...quoted, ...keys.map((key) => `"${key}":`)].filter((word) => view.includes(word));
}

describe("an assessed attempt full of mistakes", () => {
  it("sends the bench no rule, no weight, no sentence of a finding, no derived figure, from first byte to last", async () => {
    const { screen, asked, wiring } = await attemptOf("assessed", mistakes, shorts);
    expect(judge(wiring).findings.length).toBeGreaterThan(3);
    expect(asked).toEqual([
      { ok: false, code: "not-in-assessed", facts: {} },
      { ok: false, code: "no-hints-assessed", facts: {} },
    ]);
    expect(screen.frames.length).toBeGreaterThan(15);
    const sent = screen.frames.map(withoutScenario);
    for (const frame of sent) expect(tellTales(frame, wiring)).toEqual([]);
    expect(sent.join("")).not.toContain("modelAnswers");
    expect(sent.join("")).not.toContain("wrongAnswers");
  });

  it("would have told all of that in practice: the same work there does", async () => {
    const { screen, wiring } = await attemptOf("practice", mistakes, shorts);
    const told = tellTales(screen.frames.map(withoutScenario).join(""), wiring);
    expect(told).toEqual(
      expect.arrayContaining([
        '"share":',
        '"carries":',
        '"run":',
        '"lengthM":',
        '"missed":',
        '"check":',
        '"expected":',
        '"danger',
        '"fix',
      ]),
    );
    expect(told.length).toBeGreaterThan(15);
  });

  it("looks the same as a right one but for the joins, their sizes and what hangs on them alone", async () => {
    const wrong = (await attemptOf("assessed", mistakes, shorts)).last;
    const good = (await attemptOf("assessed", right)).last;
    expect(withoutJoins(wrong)).toEqual(withoutJoins(good));
  });
});

/** A ring of small cable with all its dead tests called a pass, switched on and under load for two hours. */
async function loadedIn(mode: "assessed" | "practice") {
  const { bench, url } = await testServer({ scenarios: [existing] });
  const screen = new Screen(url);
  await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode });
  await bench.does("accept-caution", {});
  for (const act of deadSequence) await bench.does("dead-act", act);
  if (mode === "assessed") await bench.does("declare-dead", {});
  await bench.does("match-as-found", {});
  bench.atRest();
  await bench.does("go-to-step", { step: "wire" });
  await bench.does("pull", { what: "all" });
  bench.atRest();
  for (const [from, to] of right) await bench.cable(from, to, 1.5);
  bench.atRest();
  await bench.does("go-to-step", { step: "test" });
  await allDeadTests(bench);
  await bench.does("energise", { way: "way-1" as never });
  await bench.does("go-to-step", { step: "load" });
  for (const appliance of ["socket-1/kettle", "socket-1/heater", "socket-2/fan-heater"])
    await bench.does("switch-appliance", { appliance, isOn: true });
  for (const toS of [600, 7200]) await bench.does("move-load-clock", { toS });
  const { attempt } = await screen.sees((view) => view.attempt?.load?.nowS === 7200);
  const { wiring } = bench.bench.core.work.run!.judged();
  return { sent: screen.frames.map(withoutScenario), wiring, load: attempt!.load! };
}

describe("an assessed attempt with an overloaded ring under load", () => {
  // What a device is rated at is a setting that everybody sees.
  const withoutDevices = (frame: string): string => frame.replaceAll(/"devices":\[[^\]]*\]/g, "");
  const judgements = ["heat", "hottest", "isUnprotected", "earlyC", "lateC", "zone"].map(
    (key) => `"${key}":`,
  );

  it("sends the bench the currents and whether the device is open, and no byte of what they mean", async () => {
    const { sent, wiring, load } = await loadedIn("assessed");
    expect(judge(wiring).findings.length).toBeGreaterThan(0);
    expect(load.legs).toHaveLength(1);
    expect(load.devices).toMatchObject([{ state: "closed", ratingA: 32 }]);
    for (const frame of sent.map(withoutDevices)) {
      expect(tellTales(frame, wiring)).toEqual([]);
      expect(judgements.filter((key) => frame.includes(key))).toEqual([]);
    }
  });

  it("would have told all of that in practice", async () => {
    const { sent, wiring } = await loadedIn("practice");
    const all = withoutDevices(sent.join(""));
    expect(tellTales(all, wiring)).toEqual(expect.arrayContaining(['"ratingA":', '"isBelow":']));
    expect(judgements.filter((key) => all.includes(key))).toEqual(judgements);
  });
});

/** A view without what is a join, and without what differs between any two attempts. */
function withoutJoins(view: BenchView): object {
  const { attempt, ...bench } = view;
  const { cables: _cables, joints: _joints, id: _id, say: _say, ...rest } = attempt!;
  return { ...bench, revision: 0, benchName: "", attempt: rest };
}

describe("what is said in an assessed attempt", () => {
  it("goes by the step and by what is still to be chosen, never by what is right", async () => {
    const wrong = await attemptOf("assessed", mistakes);
    const good = await attemptOf("assessed", right);
    expect(wrong.last.attempt?.say).toEqual(good.last.attempt?.say);
  });
});
