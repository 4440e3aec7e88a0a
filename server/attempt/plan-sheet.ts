import type { PlanView, Said } from "../../shared/protocol/bench-view.ts";
import type { PlanQuestion } from "../../shared/protocol/commands.schema.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";

/** The design worksheet of a scenario: its questions in the order of the trade, and what is right. */
export interface PlanSheet {
  questions: {
    question: PlanQuestion;
    choices?: number[];
    check: (answer: number) => { isRight: boolean; reason: Said };
  }[];
  bars: NonNullable<PlanView["bars"]>;
}

/** The worksheet of a scenario. */
export function planSheetOf(_scenario: StrippedScenario): PlanSheet {
  return { questions: [], bars: [] };
}
