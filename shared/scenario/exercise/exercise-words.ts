/** What an exercise can be about. Ids of exercises name them, so that none is ever reused. */
export const exerciseTopics = ["ring", "radial", "fused"] as const;
export type ExerciseTopic = (typeof exerciseTopics)[number];

export const exerciseLevels = [1, 2, 3] as const;
export type ExerciseLevel = (typeof exerciseLevels)[number];

/** What an exercise is made from: the same order always makes the same one. */
export interface ExerciseOrder {
  topic: ExerciseTopic;
  level: ExerciseLevel;
  /** A whole number from 0 to 2^32 - 1. */
  seed: number;
}

/** The id of an exercise as a scenario, such as "exercise-ring-2-1z141z3": the seed stands in base 36. */
export const exerciseId = ({ topic, level, seed }: ExerciseOrder): string =>
  `exercise-${topic}-${level}-${seed.toString(36)}`;

/** What an exercise was made from, told from its id; undefined for any other scenario. */
export function exerciseOrder(id: string): ExerciseOrder | undefined {
  const [, topicName, levelName, seedText = ""] =
    /^exercise-([a-z]+)-([1-9])-([0-9a-z]{1,7})$/.exec(id) ?? [];
  const topic = exerciseTopics.find((one) => one === topicName);
  const level = exerciseLevels.find((one) => String(one) === levelName);
  const seed = Number.parseInt(seedText, 36);
  if (!topic || !level || seed >= 2 ** 32) return undefined;
  return exerciseId({ topic, level, seed }) === id ? { topic, level, seed } : undefined;
}
