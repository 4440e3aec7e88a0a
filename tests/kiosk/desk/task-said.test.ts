import { describe, expect, it } from "vitest";
import { keepEn, type KeepKey } from "../../../kiosk/desk/keep/keep-en.ts";
import { taskSaid } from "../../../kiosk/desk/keep/task-said.ts";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import type { TaskView } from "../../../shared/protocol/keep-view.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";

const words = {
  t: (key: KeepKey, facts: Record<string, Fact> = {}) =>
    fillGaps(keepEn[key], (name) => facts[name]?.toString()),
  time: () => "1 May",
};
const task = (change: Partial<TaskView>): TaskView => ({
  ...{ what: "restore", state: "going", step: "copying", doneCount: 0, totalCount: 0 },
  ...{ problem: null, facts: {}, ...change },
});

describe("what is said of something that is done with the records or the program", () => {
  it.each<[Partial<TaskView>, string]>([
    [{}, "Bringing a back-up back: copying"],
    [
      { what: "back-up", step: "proving", doneCount: 2000, totalCount: 9000 },
      "Back-up: proving the records, 2000 of 9000",
    ],
    [{ what: "update", state: "stopped" }, "Update: stopped. Nothing is changed."],
    [
      { state: "done", what: "try-restore", facts: { rowCount: 7, madeWallMs: 1, erasedCount: 0 } },
      "It can be brought back. Records: 7, of 1 May. Nothing is changed.",
    ],
    [
      { what: "update", state: "failed", problem: "damaged-file", facts: { reason: "LICENSE" } },
      "Update: a file of it is damaged: LICENSE. Nothing is changed.",
    ],
    [
      { state: "failed", problem: "something-new" },
      "Bringing a back-up back: it ended early. Nothing is changed.",
    ],
  ])("%o", (change, said) => {
    expect(taskSaid(task(change), words)).toBe(said);
  });
});
