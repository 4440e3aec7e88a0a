import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { breakerOfTask } from "../../server/attempt/circuit-chart.ts";
import { demoPeople } from "../../server/demo/people.ts";
import { readBoardFile, scenarioKit } from "../../server/library.ts";
import type { FindingView } from "../../shared/protocol/bench-view.ts";
import { lacking } from "../../shared/scenario/fits-board.ts";
import { isWhole, someOf } from "../breadth.ts";
import { askedVerdict } from "./asked-verdict.ts";
import { deadSequenceOn } from "./dead-sequence.ts";
import { soon } from "./board/board-double.ts";
import { TestBench } from "./test-bench.ts";
import { wireAnswer } from "./wire-answer.ts";

const boards = ["small", "workshop", "lighting"].map((id) => readBoardFile(`hardware/boards/${id}.json`));
const kits = readdirSync("scenarios")
  .filter((file) => file.endsWith(".json"))
  .map((file) => scenarioKit(readFileSync(`scenarios/${file}`), file))
  .flatMap((kit) => ("problems" in kit ? [] : [kit]));
const cases = kits.flatMap((kit) => {
  const file = boards.find(({ board }) => lacking(kit.stripped, board).length === 0);
  const answers = kit.scenario.wrongAnswers.map(({ name, built }) => ({ answer: name, built }));
  return file ? answers.map((one) => ({ ...one, task: kit.scenario.id, kit, file })) : [];
});
type Case = (typeof cases)[number];

/** A bench on a simulated board with an answer of a task wired on it and checked. */
async function checked({ kit, built, file, task }: Case, mode: "practice" | "assessed" = "practice") {
  const bench = await new TestBench({
    scenarios: [kit],
    parts: { board: file.board, boardBytes: file.bytes },
  }).start();
  await bench.does(
    "sign-in",
    mode === "practice" ? { by: "guest" } : { by: "badge", badge: demoPeople[0]?.badge ?? "" },
  );
  await bench.does("start-attempt", { scenario: task, mode });
  await bench.does("accept-caution", {});
  if (kit.scenario.isExistingCircuit)
    for (const act of deadSequenceOn(breakerOfTask(kit.stripped))) await bench.does("dead-act", act);
  // Assessed work begins on what was found there; then all of it is taken out.
  await bench.does("match-as-found", {});
  bench.atRest();
  await bench.does("go-to-step", { step: "wire" });
  await bench.does("pull", { what: "all" });
  bench.atRest();
  await wireAnswer(bench, built, file.board);
  return bench;
}

async function findingsOf(bench: TestBench): Promise<FindingView[]> {
  await bench.does("ask-verdict", {});
  return bench.attempt().verdict?.findings ?? [];
}

/** The verdict of this moment. */
async function verdictOf(bench: TestBench): Promise<ReturnType<typeof askedVerdict>> {
  await bench.does("ask-verdict", {});
  return askedVerdict(bench);
}

async function tap(bench: TestBench, { steps }: NonNullable<FindingView["mend"]>): Promise<void> {
  for (const step of steps) {
    if (step.act === "declare") {
      const { subject, key, value } = step;
      await bench.does("declare", { subject, key, value });
    } else if (step.act === "pull") await bench.does("pull", { what: "cable", cable: step.cable });
    else {
      const { entryA, entryB, csaMm2 } = step;
      await bench.does("plug-cable", { entryA, entryB, ...(csaMm2 === undefined ? {} : { csaMm2 }) });
    }
    await soon();
    bench.atRest();
  }
}

describe("a mend that one touch makes", () => {
  /** What kinds of mend the tasks' wrong answers were offered. */
  const offeredKeys = new Set<string>();
  /** Of how many wrong answers one thing puts all right, and a touch does just that. */
  let leastCount = 0;

  it.each(someOf(cases, 6))(
    "takes the note away, and as many more come out as were said: $task, $answer",
    async (one) => {
      const first = await checked(one);
      const offered = await findingsOf(first);
      const before = new Set(offered.map((finding) => finding.id));
      const least = first.bench.core.work.run?.leastChange() ?? [];
      for (const [at, { id, mend, followCount = 0 }] of offered.filter(({ mend }) => mend).entries()) {
        if (!mend) continue;
        offeredKeys.add(mend.said.key);
        const bench = at === 0 ? first : await checked(one);
        expect((await verdictOf(bench)).notes).toEqual([...before]);
        await tap(bench, mend);
        const { notes, proposal } = await verdictOf(bench);
        expect(notes, JSON.stringify(mend)).not.toContain(id);
        expect(
          notes.filter((note) => !before.has(note)),
          id,
        ).toHaveLength(followCount);
        // Where one thing is least to do and a key can do it, the key of a note does that and nothing else.
        if (least.length === 1 && offered.length === 1 && (least[0]?.kind !== "plug" || least[0].isAgain)) {
          expect(proposal, JSON.stringify([least, mend])).toBe("met");
          leastCount += 1;
        }
      }
    },
  );

  it("is what is least to do, for as many wrong answers as one thing puts right", () => {
    expect(leastCount).toBeGreaterThan(isWhole ? 15 : 0);
  });

  it("is never offered in assessed work, nor is it said what follows", async () => {
    for (const one of cases.slice(0, 5)) {
      const bench = await checked(one, "assessed");
      expect(JSON.stringify(bench.attempt())).not.toMatch(/"mend"|"followCount"/);
    }
  });

  it("is not offered for work that is handed in, and for a board that has changed it is that of before", async () => {
    const one = cases.find(({ answer }) => answer.includes("1.5"));
    if (!one) throw new Error("no wrong answer in 1.5 mm²");
    const bench = await checked(one);
    const mends = () => bench.attempt().verdict?.findings.flatMap(({ mend }) => mend ?? []);
    await findingsOf(bench);
    const offered = mends();
    expect(offered).not.toEqual([]);
    const [cable] = bench.attempt().cables;
    if (!cable) throw new Error("no cable");
    await bench.does("pull", { what: "cable", cable: cable.id });
    await soon();
    bench.atRest();
    expect(bench.attempt().verdict?.isCurrent).toBe(false);
    expect(mends()).toEqual(offered);
    await findingsOf(bench);
    await bench.does("hand-in", {});
    expect(mends()).toEqual([]);
  });

  it("is a size, a fuse, the other side of a unit, whole cores or a cable taken out: each somewhere in the tasks", () => {
    const kinds = [
      "cores",
      "csaMm2",
      "deviceCurve",
      "deviceRatingA",
      "fuseRatingA",
      "pull",
      "switched",
      "turn",
    ];
    const keys = kinds.map((kind) => `mend.${kind}`);
    if (isWhole) expect([...offeredKeys].sort()).toEqual(keys);
    else expect(keys).toEqual(expect.arrayContaining([...offeredKeys]));
  });
});
