import type { StationId } from "../../shared/board/ids.ts";
import type { Said } from "../../shared/protocol/bench-view.ts";
import type { PlanQuestion } from "../../shared/protocol/attempt-words.ts";

/** What was answered so far, by question. */
export type Answers = Readonly<Partial<Record<PlanQuestion, number>>>;

/** What is said of a wrong answer before the right one is: a nudge, then the relation with its numbers. */
export type PlanHelp = (answer: number, answers: Answers) => { nudge: Said; relation: Said };

/** One question of the worksheet, what may be chosen, and how an answer is held to what is right. */
export interface PlanItem {
  question: PlanQuestion;
  /** Where a fuse is to be chosen. */
  station?: StationId;
  choices?: number[];
  /** `reason` tells the answer; `relation` is what speaks against this one without telling it. */
  mark: (answer: number, answers: Answers) => { isRight: boolean; reason: Said; relation?: Said };
  help: PlanHelp;
}
