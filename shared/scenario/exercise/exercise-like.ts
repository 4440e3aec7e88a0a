import type { BoardDescription } from "../../board/board.schema.ts";
import { fitsBoard } from "../fits-board.ts";
import type { StrippedScenario } from "../scenario.schema.ts";
import {
  type ExerciseLevel,
  exerciseLevels,
  exerciseOrder,
  type ExerciseOrder,
  type ExerciseTopic,
} from "./exercise-words.ts";
import { exerciseNeeds } from "./make-exercise.ts";

type Kind = Omit<ExerciseOrder, "seed">;

/**
 * The topic and level of exercises that are like a task: the highest level up to its own that a board has room for.
 * Undefined for a task that there are no exercises like, such as one about lights or readings.
 */
export function exerciseLike(
  scenario: StrippedScenario,
  board: Pick<BoardDescription, "stations">,
): Kind | undefined {
  const kind = exerciseOrder(scenario.id) ?? kindOf(scenario);
  if (!kind) return undefined;
  return exerciseLevels
    .filter((level) => level <= kind.level)
    .map((level): Kind => ({ topic: kind.topic, level }))
    .findLast((one) => fitsBoard(exerciseNeeds(one), board));
}

/** What a task of the library is about, told from what it asks for. */
function kindOf({ requirements, stations }: StrippedScenario): Kind | undefined {
  const asks = (kind: (typeof requirements)[number]["kind"]) =>
    requirements.filter((one) => one.kind === kind);
  if (asks("readings").length + asks("fault-named").length > 0) return undefined;
  if (stations.some(({ kind }) => kind === "luminaire" || kind === "ceiling-rose")) return undefined;
  const chosen = new Set(stations.flatMap(({ chosen = [] }) => chosen));
  const of = (topic: ExerciseTopic, level: ExerciseLevel): Kind => ({ topic, level });
  if (asks("through-fcu").length > 0) {
    if (asks("fuse").length > 0) return of("fused", 3);
    return of("fused", chosen.has("fuseRatingA") ? 2 : 1);
  }
  const shape = requirements.find((one) => one.kind === "shape");
  if (shape?.shape === "ring") {
    const spurCount = requirements.flatMap((one) => (one.kind === "unfused-spur" ? one.stations : [])).length;
    return of("ring", spurCount > 1 ? 3 : spurCount === 1 ? 2 : 1);
  }
  if (shape?.shape !== "radial") return undefined;
  if (!chosen.has("deviceRatingA")) return of("radial", 1);
  return of("radial", stations.length > 4 ? 3 : 2);
}
