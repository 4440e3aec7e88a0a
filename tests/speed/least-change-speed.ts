import { readdirSync, readFileSync } from "node:fs";
import { makeBoards } from "../../hardware/boards/make-boards.ts";
import { judge } from "../../shared/rules/judge.ts";
import { fitsBoard } from "../../shared/scenario/fits-board.ts";
import { leastChange } from "../../shared/scenario/least-change.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import { ms, processorMs, type SpeedLine } from "./speed-line.ts";

const mostMs = 200;

/** How long the least change of a wrong answer is looked for on the workshop board, the slowest of all tasks. */
export const lines = async (): Promise<SpeedLine[]> => {
  const board = makeBoards()["workshop"];
  if (!board) throw new Error("there is no workshop board");
  const tookMs = readdirSync("scenarios")
    .filter((file) => file.endsWith(".json"))
    .flatMap((file) => {
      const read = readScenario(readFileSync(`scenarios/${file}`, "utf8"), file);
      if (!read.ok || !fitsBoard(read.value, board)) return [];
      const scenario = read.value;
      return scenario.wrongAnswers.map(({ built }) =>
        processorMs(() => leastChange({ scenario, board, built, judge })),
      );
    });
  const worstMs = Math.max(...tookMs);
  return [
    {
      what: "least change that puts a wrong answer right: slowest of all",
      reached: ms(worstMs),
      target: `under ${mostMs} ms`,
      ok: worstMs < mostMs,
    },
  ];
};
