import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { demoCriteria } from "../../../server/demo/criteria.ts";
import { proposalFor } from "../../../server/desk/criteria.ts";
import { judgedCriteria } from "../../../server/desk/decision.ts";
import { deskStateOf, releasedDecision } from "../../../server/desk/desk-state.ts";
import { deskEventOfRow } from "../../../server/desk/desk-events.ts";
import { openSigner } from "../../../server/store/log-signer.ts";
import { LogWriter } from "../../../server/store/log-writer.ts";
import { openForWriting } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import { changeLogged } from "../../change-logged.ts";
import { ManualClock } from "../manual-clock.ts";
import { expectAsRebuilt } from "../store/table-of-attempts.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";
import { answers, benchWithWork, byStaff, clearBoard, handIn } from "./assessed-work.ts";

const recordOf = (bench: TestBench, id: string) => bench.parts.records?.attempts.byId(id);
const stateOf = (bench: TestBench, id: string) =>
  deskStateOf(bench.parts.records?.logReader.rowsOfAttempt(id) ?? []);

describe("what the bench proposes for a criterion", () => {
  const verdictOf = (change: Partial<Verdict>): Verdict =>
    ({ findings: [], undetermined: [], requirements: [], ...change }) as unknown as Verdict;
  const proposed = (change: Partial<Verdict>) =>
    Object.fromEntries(
      demoCriteria.criteria.map((criterion) => [criterion.id, proposalFor(criterion, verdictOf(change))]),
    );

  it("is met where nothing was found, and nothing where only a person can say", () => {
    expect(proposed({})).toEqual({
      safe: "met",
      right: "met",
      "as-asked": "met",
      tested: "met",
      "way-of-working": null,
    });
  });

  it("is not yet for what was found, and for that alone", () => {
    const found = (rule: string, weight: string) =>
      proposed({ findings: [{ rule, weight }] } as unknown as Partial<Verdict>);
    expect(found("short", "danger")).toMatchObject({ safe: "not-yet", right: "met", tested: "met" });
    expect(found("ring-open", "fix")).toMatchObject({ safe: "met", right: "not-yet", tested: "met" });
    expect(found("test-missing", "fix")).toMatchObject({ safe: "met", right: "met", tested: "not-yet" });
    const requirements = [{ answer: "met" }, { answer: "not-yet" }] as Verdict["requirements"];
    expect(proposed({ requirements })).toMatchObject({ "as-asked": "not-yet" });
  });

  it("cannot be said where something is undetermined", () => {
    const undetermined = [{ rule: "ring-cable" }] as unknown as Verdict["undetermined"];
    const requirements = [{ answer: "cannot-say" }] as Verdict["requirements"];
    expect(proposed({ undetermined, requirements })).toMatchObject({
      safe: "cannot-say",
      right: "cannot-say",
      "as-asked": "cannot-say",
    });
  });
});

describe("a decision", () => {
  it("is told which criterion it lacks a reason or a tick for, by its number", () => {
    const nothingFound = { findings: [], undetermined: [], requirements: [] } as unknown as Verdict;
    const lacking = (change: Parameters<typeof answers>[0]) =>
      judgedCriteria(
        demoCriteria,
        nothingFound,
        answers({ right: { answer: "met" }, "as-asked": { answer: "met" }, ...change }),
      );
    expect(lacking({ "way-of-working": { answer: "cannot-assess" } })).toMatchObject({
      code: "criterion-reason-missing",
      facts: { criterion: 5 },
    });
    expect(lacking({ tested: { isValid: false } })).toMatchObject({
      code: "ticks-missing",
      facts: { criterion: 4 },
    });
  });

  it("answers every criterion, has all four ticks for what is met, and a reason for what the bench proposed otherwise", async () => {
    const { bench, id } = await benchWithWork();
    const decide = (criteria: ReturnType<typeof answers>) =>
      byStaff(bench, "assessor", "decide", { attempt: id, criteria, says: "" });
    expect(await decide(answers().slice(1))).toBe("criteria-missing");
    expect(await decide([...answers().slice(1), ...answers().slice(1, 2)])).toBe("criteria-missing");
    expect(await decide(answers({ safe: { isCurrent: false } }))).toBe("ticks-missing");
    expect(await decide(answers({ safe: { answer: "not-yet" } }))).toBe("criterion-reason-missing");
    expect(await decide(answers({ "way-of-working": { answer: "cannot-assess" } }))).toBe(
      "criterion-reason-missing",
    );
    expect(recordOf(bench, id)?.decision).toBeNull();
    const reason = "The tester was not proved again.";
    expect(await decide(answers({ safe: { answer: "not-yet", reason } }))).toBe("done");
    expect(stateOf(bench, id).decisions[0]).toMatchObject({
      person: "demo-assessor",
      outcome: "not-yet",
      criteria: expect.arrayContaining([
        expect.objectContaining({ criterion: "safe", proposed: "met", answer: "not-yet", reason }),
        expect.objectContaining({ criterion: "way-of-working", proposed: null, answer: "met" }),
      ]) as unknown,
    });
    expect(recordOf(bench, id)).toMatchObject({ decision: "not-yet", overrideCount: 1 });
    expectAsRebuilt(bench.writing);
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });

  it("is on assessed work that was handed in, and on nothing else", async () => {
    const bench = await (await new TestBench().start()).isWiring("practice");
    const practice = bench.attempt().id;
    const decide = (attempt: string) =>
      byStaff(bench, "assessor", "decide", { attempt, criteria: answers(), says: "" });
    expect(await decide(practice)).toBe("not-assessed");
    await bench.does("leave-attempt", {});
    await bench.isWiring("assessed");
    expect(await decide(bench.attempt().id)).toBe("not-handed-in");
    expect(await decide("nobody")).toBe("no-such-attempt");
  });

  it("is sealed by who decided, then released; a correction points to it, and the learner sees the old one until it is released", async () => {
    const { bench, id } = await benchWithWork();
    const seal = (staff?: string) => byStaff(bench, "assessor", "seal-decision", { attempt: id }, staff);
    const release = () => byStaff(bench, "assessor", "release", { attempt: id });
    const decide = (change: object = {}) =>
      byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "", ...change });
    expect(await seal()).toBe("decide-first");
    expect(await release()).toBe("decide-first");
    expect(await decide()).toBe("done");
    expect(await release()).toBe("seal-first");
    expect(await seal("demo-other")).toBe("not-your-decision");
    expect(await seal()).toBe("done");
    expect(await seal()).toBe("decision-sealed");
    expect(releasedDecision(stateOf(bench, id))).toBeUndefined();
    expect(await release()).toBe("done");
    expect(await release()).toBe("released-already");
    const first = releasedDecision(stateOf(bench, id));
    expect(first).toMatchObject({ outcome: "not-yet" });
    expect(await decide()).toBe("decision-sealed");
    expect(await decide({ correctsFor: "The ticks were set in haste.", nextKind: "retake" })).toBe("done");
    expect(recordOf(bench, id)).toMatchObject({
      sealedWallMs: null,
      releasedWallMs: null,
      nextKind: "retake",
    });
    expect(releasedDecision(stateOf(bench, id))?.hash).toBe(first?.hash);
    await seal();
    await release();
    expect(releasedDecision(stateOf(bench, id))).toMatchObject({
      corrects: { hash: first?.hash, why: "The ticks were set in haste." },
    });
    expectAsRebuilt(bench.writing);
  });

  it("does not move what lies open on the bench, and comes with the learner's own word and what was seen", async () => {
    const { bench, id } = await benchWithWork();
    await bench.does("declare-own-work", {});
    expect(await bench.refusal("declare-own-work", {})).toBe("declared-already");
    await bench.does("leave-attempt", {});
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    const open = bench.attempt();
    const seen = "Left a core out at socket 1 and did not test.";
    await byStaff(bench, "assessor", "observe", {
      attempt: id,
      seen,
      observerSays: "",
      learnerSays: "Sorry.",
    });
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    expect(bench.attempt()).toEqual(open);
    expect(stateOf(bench, id)).toMatchObject({
      declaredWallMs: expect.any(Number) as number,
      observations: [{ person: "demo-assessor", seen, learnerSays: "Sorry." }],
    });
  });

  it("that is sealed carries the bench's signature, and one byte of it changed is named", async () => {
    const folder = temporaryFolder();
    const path = join(folder, "spurwise.db");
    const before = new TestBench({ folder });
    await before.start();
    const id = await handIn(before);
    await byStaff(before, "assessor", "decide", { attempt: id, criteria: answers(), says: "As seen." });
    const decision = stateOf(before, id).decisions[0]?.hash ?? "";
    await before.stop();
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, new ManualClock(), openSigner(folder));
    const author = { by: "assessor", session: "s" } as const;
    writer.append([
      {
        attemptId: null,
        type: "boot",
        author: { by: "bench", session: null },
        content: { publicKey: writer.publicKey },
      },
    ]);
    const content = { person: "demo-assessor", decision };
    const rows = writer.append([{ attemptId: id, type: "decision-sealed", author, content }]);
    expect(rows.map(({ type }) => type)).toEqual(["decision-sealed", "sealed"]);
    expect(verifyLog(database)).toMatchObject({ isSound: true });
    const sequence = changeLogged(database, "decided", "As seen.", "As seem.");
    expect(verifyLog(database)).toMatchObject({
      isSound: false,
      firstBadRecord: expect.stringContaining(`event ${sequence}`) as string,
    });
    database.close();
  });
});

describe("the next assessed go at a task", () => {
  it("is what the released decision said, until something was handed in again; a broken-off one does not use it up", async () => {
    const { bench, id } = await benchWithWork();
    const criteria = answers();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria, says: "", nextKind: "retake" });
    await byStaff(bench, "assessor", "seal-decision", { attempt: id });
    const startsAgain = async (): Promise<string | undefined> => {
      await bench.does("leave-attempt", {});
      await bench.does("sign-out", {});
      clearBoard(bench);
      await bench.isWiring("assessed");
      return recordOf(bench, bench.attempt().id)?.kind;
    };
    expect(await startsAgain()).toBe("first");
    await byStaff(bench, "trainer", "end-attempt", { why: "started-wrongly" });
    await byStaff(bench, "assessor", "release", { attempt: id });
    await bench.isWiring("assessed");
    expect(recordOf(bench, bench.attempt().id)?.kind).toBe("retake");
    await byStaff(bench, "trainer", "end-attempt", { why: "bench-at-fault" });
    await bench.isWiring("assessed");
    expect(recordOf(bench, bench.attempt().id)?.kind).toBe("retake");
    await bench.does("hand-in", {});
    expect(await startsAgain()).toBe("first");
  });
});

describe("the learner of assessed work", () => {
  it("sees what was decided and found once it is released, and before that nothing but their own word", async () => {
    const { bench, id } = await benchWithWork();
    const told = () => JSON.stringify(bench.attempt());
    const secret = ["ring-open", "not-yet", "As seen by me", "Open at socket 1"];
    const isSilent = () => secret.filter((word) => told().includes(word));
    await bench.does("declare-own-work", {});
    expect(bench.attempt()).toMatchObject({ isOwnWorkDeclared: true, verdict: null });
    const says = "As seen by me";
    const reason = "Open at socket 1";
    const criteria = answers({ safe: { answer: "not-yet", reason } });
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria, says });
    expect(isSilent()).toEqual([]);
    await byStaff(bench, "assessor", "seal-decision", { attempt: id });
    expect(isSilent()).toEqual([]);
    await byStaff(bench, "assessor", "release", { attempt: id });
    expect(bench.attempt()).toMatchObject({
      outcome: {
        outcome: "not-yet",
        says,
        criteria: expect.arrayContaining([
          expect.objectContaining({ id: "safe", answer: "not-yet", reason }),
        ]) as unknown,
      },
      verdict: { findings: [{ id: expect.stringContaining("ring-open") as string }] },
    });
  });

  it("finds it at their next sign-in, when the bench has moved on to other work, and nobody else does", async () => {
    const { bench, id } = await benchWithWork();
    const decide = (change: object) =>
      byStaff(bench, "assessor", "decide", {
        attempt: id,
        criteria: answers(),
        says: "Again, please.",
        ...change,
      });
    const seal = () => byStaff(bench, "assessor", "seal-decision", { attempt: id });
    const release = () => byStaff(bench, "assessor", "release", { attempt: id });
    await bench.does("leave-attempt", {});
    await bench.does("sign-out", {});
    clearBoard(bench);
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-03" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await decide({ nextKind: "retake" });
    await seal();
    const outcomesOf = async (badge: string) => {
      await bench.does("sign-out", {});
      await bench.does("sign-in", { by: "badge", badge });
      return bench.view().outcomes;
    };
    await bench.does("leave-attempt", {});
    expect(await outcomesOf("SPURWISE-DEMO-02")).toBeUndefined();
    expect(await bench.refusal("see-decision", { attempt: id })).toBe("no-such-attempt");
    await release();
    expect(await outcomesOf("SPURWISE-DEMO-02")).toMatchObject([
      { attempt: id, scenario: "first-spur", outcome: { says: "Again, please.", nextKind: "retake" } },
    ]);
    expect(await outcomesOf("SPURWISE-DEMO-03")).toBeUndefined();
    expect(await bench.refusal("see-decision", { attempt: id })).toBe("no-such-attempt");
    // A correction shows once it is released; until then what was released before.
    await decide({ says: "Corrected.", correctsFor: "A slip." });
    expect(await outcomesOf("SPURWISE-DEMO-02")).toMatchObject([{ outcome: { says: "Again, please." } }]);
    await seal();
    await release();
    expect(await outcomesOf("SPURWISE-DEMO-02")).toMatchObject([{ outcome: { says: "Corrected." } }]);
  });

  it("had it before them: the first time goes on record as theirs, and a start later the bench still knows", async () => {
    const { bench, id } = await benchWithWork();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    await byStaff(bench, "assessor", "seal-decision", { attempt: id });
    await byStaff(bench, "assessor", "release", { attempt: id });
    expect(bench.attempt().outcome?.isSeen).toBeUndefined();
    await bench.does("see-decision", { attempt: id });
    bench.clock.advance(60_000);
    await bench.does("see-decision", { attempt: id });
    const seen = bench.events("decision-seen");
    const hash = stateOf(bench, id).decisions[0]?.hash;
    expect(seen).toMatchObject([{ author: { by: "learner" }, content: { decision: hash } }]);
    expect(bench.attempt().outcome?.isSeen).toBe(true);
    const { seenWallMs, releasedWallMs } = stateOf(bench, id).decisions[0] ?? {};
    expect(seenWallMs).toBe(releasedWallMs);
    expectAsRebuilt(bench.writing);
    bench.cutPower();
    const again = await new TestBench({ folder: bench.folder }).start();
    await again.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    expect(again.view().attempt?.outcome ?? again.view().outcomes?.[0]?.outcome).toMatchObject({
      isSeen: true,
    });
    expect(verifyLog(again.writing)).toMatchObject({ isSound: true });
  });
});

describe("a verifier", () => {
  it("reviews a sealed decision, agreed or to be looked at again with the reason", async () => {
    const { bench, id } = await benchWithWork();
    const review = (answer: "agreed" | "look-again", says = "") =>
      byStaff(bench, "verifier", "review", { attempt: id, answer, says });
    expect(await review("agreed")).toBe("decide-first");
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    expect(await review("agreed")).toBe("seal-first");
    await byStaff(bench, "assessor", "seal-decision", { attempt: id });
    expect(await review("look-again")).toBe("reason-missing");
    expect(await review("look-again", "No word of the tests.")).toBe("done");
    expect(await review("agreed")).toBe("done");
    expect(recordOf(bench, id)).toMatchObject({ review: "agreed" });
    expect(stateOf(bench, id).reviews.map(({ answer }) => answer)).toEqual(["look-again", "agreed"]);
  });

  it("gives a second view only blind: never of their own decision, nor once they were shown it", async () => {
    const { bench, id } = await benchWithWork();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    const view = (role: "assessor" | "verifier", staff?: string) =>
      byStaff(bench, role, "view-second", { attempt: id, criteria: answers() }, staff);
    expect(await view("assessor")).toBe("not-blind");
    const verifier = { id: "demo-verifier", name: "Piotr Lasek", role: "verifier" } as const;
    const record = recordOf(bench, id);
    bench.bench.core.shown.add(
      { staff: verifier, author: { by: "verifier", session: "s" } },
      record ? [record] : [],
    );
    expect(await view("verifier")).toBe("not-blind");
    expect(await view("assessor", "demo-other")).toBe("done");
    expect(stateOf(bench, id).secondViews).toMatchObject([{ person: "demo-other" }]);
  });

  it("draws a sample by a seed: the same seed draws the same, another another, and the log has what was drawn", async () => {
    const bench = await new TestBench().start();
    expect(await byStaff(bench, "verifier", "draw-sample", { seed: "a", size: 2, risk: "all" })).toBe(
      "nothing-to-sample",
    );
    for (let count = 0; count < 6; count += 1) {
      const id = await handIn(bench);
      await byStaff(bench, "assessor", "decide", {
        attempt: id,
        criteria: answers(count === 0 ? { safe: { answer: "not-yet", reason: "No." } } : {}),
        says: "",
      });
      await bench.does("leave-attempt", {});
      await bench.does("sign-out", {});
      clearBoard(bench);
    }
    for (const seed of ["a", "a", "b", "c"])
      await byStaff(bench, "verifier", "draw-sample", { seed, size: 3, risk: "all" });
    const drawn = bench.events("sample-drawn").map(({ content }) => content);
    expect(drawn[1]).toEqual(drawn[0]);
    expect(drawn[0]).toMatchObject({ person: "demo-verifier", candidateCount: 6, size: 3 });
    expect(new Set(drawn.map(({ attempts }) => JSON.stringify(attempts))).size).toBeGreaterThan(1);
    await byStaff(bench, "verifier", "draw-sample", { seed: "a", size: 3, risk: "overridden" });
    expect(bench.events("sample-drawn").at(-1)?.content).toMatchObject({ candidateCount: 1 });
    expect(
      await byStaff(bench, "verifier", "draw-sample", { seed: "a", size: 3, risk: "all", assessor: "x" }),
    ).toBe("nothing-to-sample");
  });
});

describe("what the log has of the desk", () => {
  it("is read as far as it is in its form, and what is not is no event", () => {
    const row = (type: string, content: unknown) => ({
      type: type as never,
      bytes: Buffer.from(JSON.stringify(content)),
    });
    expect(deskEventOfRow(row("released", { person: "p", decision: "h" }))).toBeDefined();
    for (const [type, content] of [
      ["released", {}],
      ["released", { person: { length: { valueOf: 1 } }, decision: "h" }],
      ["decided", { person: "p" }],
      ["sensed", { added: [], removed: [] }],
    ] as const)
      expect(deskEventOfRow(row(type, content))).toBeUndefined();
    expect(deskEventOfRow({ type: "released", bytes: Buffer.from("{") })).toBeUndefined();
  });
});
