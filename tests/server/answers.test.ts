import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { breakerOfTask } from "../../server/attempt/circuit-chart.ts";
import { readBoardFile, scenarioKit } from "../../server/library.ts";
import { askedVerdict } from "./asked-verdict.ts";
import { deadSequenceOn } from "./dead-sequence.ts";
import { nameHidden } from "./name-hidden.ts";
import { putOnRecord } from "./put-on-record.ts";
import { groupFindings } from "../../shared/rules/wording/group-findings.ts";
import { judge } from "../../shared/rules/judge.ts";
import { lacking } from "../../shared/scenario/fits-board.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import { isWhole, someOf } from "../breadth.ts";
import { TestBench } from "./test-bench.ts";
import { wireAnswer } from "./wire-answer.ts";

const boards = ["small", "workshop", "lighting"].map((id) => readBoardFile(`hardware/boards/${id}.json`));
const kits = readdirSync("scenarios")
  .filter((file) => file.endsWith(".json"))
  .map((file) => scenarioKit(readFileSync(`scenarios/${file}`), file))
  .flatMap((kit) => ("problems" in kit ? [] : [kit]));

const cases = kits.flatMap((kit) => {
  const file = boards.find(({ board }) => lacking(kit.stripped, board).length === 0);
  const answers = [
    ...kit.scenario.modelAnswers
      .slice(0, isWhole ? undefined : 1)
      .map((built, index) => ({ answer: `right answer ${index + 1}`, built })),
    ...someOf(kit.scenario.wrongAnswers, 4).map(({ name, built }) => ({ answer: name, built })),
  ];
  return file
    ? answers.map(({ answer, built }) => ({ task: kit.scenario.id, answer, kit, built, file }))
    : [];
});

describe("an answer that is wired lead by lead on the board", () => {
  it("is there for every task", () => {
    expect(new Set(cases.map(({ task }) => task)).size).toBe(kits.length);
  });

  it.each(cases)(
    "is judged as the file of the task has it: $task, $answer",
    async ({ kit, built, file, task }) => {
      const bench = await new TestBench({
        isSimulated: false,
        scenarios: [kit],
        parts: { board: file.board, boardBytes: file.bytes },
      }).start();
      await bench.does("sign-in", { by: "guest" });
      await bench.does("start-attempt", { scenario: task, mode: "practice" });
      await bench.does("accept-caution", {});
      if (kit.scenario.isExistingCircuit)
        for (const act of deadSequenceOn(breakerOfTask(kit.stripped))) await bench.does("dead-act", act);
      await bench.does("go-to-step", { step: "wire" });

      await wireAnswer(bench, built, file.board);
      await putOnRecord(bench, built);
      // What an answer has on record is what the meter shows of it.
      expect(bench.events("reading-recorded").map(({ content }) => content)).toEqual(built.readings ?? []);
      await nameHidden(bench, built);
      // What was named in a hunt counts at the hand-in.
      const isHunt = kit.scenario.requirements.some(({ kind }) => kind === "fault-named");
      await bench.does(isHunt ? "hand-in" : "ask-verdict", {});

      const expected = judge(toWiring({ scenario: kit.stripped, board: file.board, built }));
      // Of what is not handed in the view looks for mends too, which is checked of its own.
      const { notes, proposal } = askedVerdict(bench);
      expect(notes).toEqual(groupFindings(expected).map(([{ id }]) => id));
      expect(proposal).toBe(expected.proposal);
      if (!isHunt) return;
      const { verdict } = bench.attempt();
      expect(verdict?.findings.map(({ id }) => id)).toEqual(notes);
      expect(verdict?.proposal).toBe(proposal);
    },
  );
});
