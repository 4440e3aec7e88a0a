import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { ChallengeResult } from "../../shared/protocol/show-view.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { fitsBoard } from "../../shared/scenario/fits-board.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { stillRun } from "../attempt/still-run.ts";
import { deskViewOf } from "../desk/replay.ts";
import type { ScenarioKit, ScenarioLibrary } from "../library.ts";
import { unloggedState } from "./unlogged-state.ts";

/** The task that a visitor tries: the first of the library, a ring and one spur, begun on a clear board. */
const challengeScenario = "first-spur";
/** The size of every lead of the show: a visitor is not asked for it. */
export const challengeCsaMm2 = 2.5;

export interface ChallengeParts {
  kit: ScenarioKit;
  board: BoardDescription;
  judge: (wiring: Wiring) => Verdict;
}

/** The task of the challenge where the bench has it and its board can take it. */
export function challengeKit(
  { kits }: Pick<ScenarioLibrary, "kits">,
  board: BoardDescription,
): ScenarioKit | undefined {
  const kit = kits.get(challengeScenario);
  return kit && fitsBoard(kit.stripped, board) ? kit : undefined;
}

/** What is wired as work that is in no log: it can be drawn and judged like any other. */
export const challengeRun = (parts: ChallengeParts, plugged: Plugged): AttemptRun =>
  stillRun(parts, stateOf(parts, plugged));

const stateOf = ({ kit }: ChallengeParts, plugged: Plugged) =>
  unloggedState(kit, plugged, () => challengeCsaMm2);

/** True where all that the task asks for is there and nothing is to be put right. */
export const isSolved = (parts: ChallengeParts, plugged: Plugged): boolean =>
  challengeRun(parts, plugged).judged().verdict.proposal === "met";

/** How a challenge ended, in the visitor's language: the first thing to put right, and what is not there yet. */
export function challengeResult(
  parts: ChallengeParts,
  plugged: Plugged,
  outcome: ChallengeResult["outcome"],
  language: Language,
): ChallengeResult {
  if (outcome === "won") return { outcome, missing: [] };
  const { verdict } = deskViewOf(parts, stateOf(parts, plugged), language);
  const first = verdict?.findings.find(({ weight }) => isToMend(weight));
  return {
    outcome,
    ...(first ? { finding: { title: first.title, what: first.what, why: first.why } } : {}),
    missing: (verdict?.requirements ?? []).flatMap(({ answer, text }) => (answer === "met" ? [] : [text])),
  };
}
