import type { TaskView } from "../../../shared/protocol/keep-view.ts";
import { keepEn, type KeepKey } from "./keep-en.ts";
import type { KeepWords } from "./keep-words.svelte.ts";

type Says = Pick<KeepWords, "t" | "time">;

const isKey = (key: string): key is KeepKey => Object.hasOwn(keepEn, key);

/** What is said of something that is done with the records or the program, or was done last. */
export function taskSaid(task: TaskView, words: Says): string {
  const { what, state, step, doneCount, totalCount, problem, facts } = task;
  const name = words.t(`task.${what}`);
  switch (state) {
    case "going": {
      const key: KeepKey = totalCount > 0 ? `step.${step}-of` : `step.${step}`;
      return words.t("task.going", { name, step: words.t(key, { done: doneCount, total: totalCount }) });
    }
    case "stopped":
      return words.t("task.stopped", { name });
    case "failed": {
      const key = `problem.${problem ?? ""}`;
      const why = words.t(isKey(key) ? key : "problem.failed", facts);
      return words.t("task.failed", { name, why });
    }
    case "done": {
      const made = facts["madeWallMs"];
      const time = typeof made === "number" ? words.time(made) : "";
      return words.t(`done.${what}`, { ...facts, time });
    }
  }
}
