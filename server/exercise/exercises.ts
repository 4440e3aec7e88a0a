import type { Judge } from "../../shared/scenario/answer-misses.ts";
import { exerciseLike } from "../../shared/scenario/exercise/exercise-like.ts";
import { exerciseId, exerciseOrder } from "../../shared/scenario/exercise/exercise-words.ts";
import { exerciseTitle, makeExercise } from "../../shared/scenario/exercise/make-exercise.ts";
import { rulesTaught } from "../../shared/scenario/rules-taught.ts";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { RuleId } from "../../shared/rules/rule.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import { type ScenarioKit, scenarioKit, type ScenarioLibrary } from "../library.ts";

/**
 * The exercise that an id stands for, made anew and read through the scenario format as a file would be; undefined for
 * any other id. Its bytes go into the log with the attempt: what was worked on is read from there for ever, whatever a
 * later program makes of the same id.
 */
export function exerciseKit(id: string, judge: Judge): ScenarioKit | undefined {
  const order = exerciseOrder(id);
  const scenario = order && makeExercise(order, judge);
  if (!scenario) return undefined;
  const kit = scenarioKit(Buffer.from(`${JSON.stringify(scenario, null, 2)}\n`), id);
  return "problems" in kit ? undefined : kit;
}

/** The title of a task of the library or of an exercise; null for one that the bench does not know. */
export function titleOf({ kits }: Pick<ScenarioLibrary, "kits">, id: string): Text | null {
  const order = exerciseOrder(id);
  return kits.get(id)?.scenario.title ?? (order ? exerciseTitle(order) : null);
}

/**
 * The id of another exercise like a task, for somebody who has handed in an attempt at it; undefined where there is
 * none. The same attempt is always offered the same one: its seed is the random end of the attempt's id.
 */
export function exerciseAfter(
  { stripped }: Pick<ScenarioKit, "stripped">,
  board: BoardDescription,
  attemptId: string,
): string | undefined {
  const like = exerciseLike(stripped, board);
  const seed = Number.parseInt(attemptId.slice(-8), 16);
  return like && Number.isInteger(seed) ? exerciseId({ ...like, seed }) : undefined;
}

const taught = new Map<string, readonly RuleId[]>();

/** The rules that an exercise teaches. All of a topic and level teach the same: one of them is made to tell. */
export function rulesOfExercise(id: string, judge: Judge): readonly RuleId[] {
  const order = exerciseOrder(id);
  if (!order) return [];
  const kind = `${order.topic} ${order.level}`;
  const scenario = taught.has(kind) ? undefined : makeExercise({ ...order, seed: 1 }, judge);
  const known = taught.get(kind) ?? (scenario ? rulesTaught(scenario) : []);
  taught.set(kind, known);
  return known;
}
