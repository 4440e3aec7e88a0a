import type { CableId } from "../../shared/board/ids.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { type BoardAtStart, boardAtStart } from "../attempt/board-at-start.ts";
import {
  type CircuitUnderTest,
  circuitUnderTest,
  circuitWith,
  type TestTask,
  testTaskOf,
} from "../attempt/circuit-under-test.ts";
import { hintText } from "../attempt/hint-text.ts";
import type { Judged } from "../attempt/picture-of.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";

/** What an act of an attempt is decided on. */
export interface Situation {
  state: AttemptState;
  scenario: StrippedScenario;
  /** The board as it is sensed now. */
  plugged: Plugged;
  /** The cables that are in now. */
  cables: readonly CableId[];
  planQuestions: readonly string[];
  /** The board held against what assessed work may begin on. */
  boardAtStart: () => BoardAtStart;
  /** Judges the board as it is now. */
  judged: () => { verdict: Verdict; wiringHash: string };
  /** What is handed in: with what was named of a hunt. */
  judgedAtHandIn: () => { verdict: Verdict; wiringHash: string };
  /** What the task has tested, and the circuit as the meter sees it now. */
  testTask: TestTask;
  circuit: () => CircuitUnderTest;
  /** The same without one of the faults of the hunt. */
  circuitWithout: (fault: number) => CircuitUnderTest;
  /** The text of hint 1, 2 or 3 for the board as it is now. */
  hint: (number: number) => Text;
}

const verdictOf = ({ verdict, wiringHash }: Judged) => ({ verdict, wiringHash });

/** The situation of an attempt now. */
export const situationOf = (run: AttemptRun): Situation => ({
  state: run.state,
  scenario: run.kit.stripped,
  plugged: run.plugged,
  cables: run.cables.map(({ id }) => id),
  boardAtStart: () => boardAtStart(run.board, run.kit.stripped, run.plugged),
  planQuestions: planSheetOf(run.kit).questions.map(({ question }) => question),
  judged: () => verdictOf(run.judged()),
  judgedAtHandIn: () => verdictOf(run.judgedAtHandIn()),
  testTask: testTaskOf(run.kit),
  circuit: () => circuitUnderTest(run),
  circuitWithout: (fault) => {
    const left = run.hiddenFaults.filter((one) => one !== run.state.hunt?.faults[fault]);
    return circuitWith(run.kit, run.picture.wiring(), left);
  },
  hint: (number) => hintText(run.kit.scenario, run.judged(), number, () => run.leastChange()),
});
