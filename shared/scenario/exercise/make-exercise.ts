import { type StationKind, usualEntries } from "../../board/station-kinds.ts";
import type { Verdict } from "../../rules/verdict.ts";
import type { Text } from "../../text/text.schema.ts";
import type { Judge } from "../answer-misses.ts";
import { routes } from "../plan-route.ts";
import type { Built, Scenario } from "../scenario.schema.ts";
import { toWiring } from "../to-wiring.ts";
import type { Draft, WrongDraft } from "./draft.ts";
import { type Draw, drawBy } from "./draw.ts";
import { drawHouse } from "./exercise-house.ts";
import { way } from "./exercise-stations.ts";
import { exerciseId, type ExerciseLevel, type ExerciseOrder, type ExerciseTopic } from "./exercise-words.ts";
import { fusedExercise } from "./fused-exercise.ts";
import { radialExercise } from "./radial-exercise.ts";
import { ringExercise } from "./ring-exercise.ts";
import { writeTask } from "./write-task.ts";

interface Topic {
  draft: (level: ExerciseLevel, draw: Draw) => Draft;
  title: Text;
  teaches: Text;
  /** Level of the library's scenarios that each level of exercises is like. */
  scenarioLevel: Record<ExerciseLevel, number>;
}

const topics: Record<ExerciseTopic, Topic> = {
  ring: {
    draft: ringExercise,
    title: { en: "A ring", pl: "Pierścień" },
    teaches: {
      en: "A ring goes out and comes back. An unfused spur feeds one point.",
      pl: "Pierścień wychodzi i wraca. Odgałęzienie bez bezpiecznika zasila jeden punkt.",
    },
    scenarioLevel: { 1: 1, 2: 1, 3: 2 },
  },
  radial: {
    draft: radialExercise,
    title: { en: "A radial", pl: "Obwód promieniowy" },
    teaches: {
      en: "The device carries the load, and the cable carries the device.",
      pl: "Wyłącznik wystarcza na obciążenie, a kabel na wyłącznik.",
    },
    scenarioLevel: { 1: 1, 2: 2, 3: 3 },
  },
  fused: {
    draft: fusedExercise,
    title: { en: "Through a fused connection unit", pl: "Przez złącze z bezpiecznikiem" },
    teaches: {
      en: "The fuse of a unit protects all that is behind it.",
      pl: "Bezpiecznik złącza chroni wszystko, co jest za nim.",
    },
    scenarioLevel: { 1: 2, 2: 3, 3: 4 },
  },
};

/** So many drafts are drawn for an order until one comes out as it must. */
const mostDrafts = 24;
/** An exercise has two wrong answers or more, one of them sound and yet not what is asked. */
const leastWrong = 2;

/** What an exercise is called, without the house it stands in. */
export const exerciseTitle = ({ topic, level }: Pick<ExerciseOrder, "topic" | "level">): Text => ({
  en: `${topics[topic].title.en}, level ${level}`,
  pl: `${topics[topic].title.pl}, poziom ${level}`,
});

/** What a board has to have for every exercise of a topic and level. */
export function exerciseNeeds({ topic, level }: Omit<ExerciseOrder, "seed">): Pick<Scenario, "stations"> {
  const { stations, needs = [] } = topics[topic].draft(level, drawBy(0));
  return { stations: [...stations, ...needs] };
}

/**
 * A task of a topic and level: the same order always makes the same one. It has a right answer by construction, the
 * task's text is written from what it asks for, and all of a level demand the same: one move away from the answer as many
 * rules can be broken, give or take one. Undefined where no draft of the order comes out so.
 */
export function makeExercise(order: ExerciseOrder, judge: Judge): Scenario | undefined {
  const { topic, level, seed } = order;
  const draw = drawBy(seed);
  for (let turn = 0; turn < mostDrafts; turn += 1) {
    const scenario = finished(order, topics[topic].draft(level, draw), draw, judge);
    if (scenario) return scenario;
  }
  return undefined;
}

/** As many entries of each side as stations of a kind can have. */
function roomOf(kind: StationKind): Scenario["stations"][number]["entries"] {
  const room: Scenario["stations"][number]["entries"] = {};
  for (const { side } of usualEntries[kind]) room[side] = (room[side] ?? 0) + 1;
  return room;
}

/** A draft with its house, text and answers; undefined where no answer is right or too little is wrong. */
function finished(order: ExerciseOrder, draft: Draft, draw: Draw, judge: Judge): Scenario | undefined {
  const { stations, loads, parts, requirements, asFound, supply } = draft;
  const { teaches, scenarioLevel } = topics[order.topic];
  const { plan, place } = drawHouse(draw, way, draft);
  const base: Scenario = {
    version: 1,
    id: exerciseId(order),
    revision: 1,
    title: exerciseTitle(order),
    place,
    level: scenarioLevel[order.level],
    teaches,
    ...writeTask(draft.opening, draft, {
      stations: stations.map(({ id, kind, settings }) => ({ id, kind, settings })),
    }),
    isExistingCircuit: asFound.cables.length > 0,
    supply,
    stations,
    plan,
    loads,
    parts,
    requirements,
    asFound,
    modelAnswers: [],
    wrongAnswers: [],
  };
  const routeBetween = routes(plan);
  // A board with room for whatever a learner may do.
  const roomy = { ...base, stations: stations.map((one) => ({ ...one, entries: roomOf(one.kind) })) };
  const judged = (built: Built): Verdict => judge(toWiring({ scenario: roomy, built, routeBetween }));
  const answer = draft.answers.find((built) => isRight(judged(built)));
  if (!answer || !draft.isOfLevel(answer)) return undefined;
  const wrongAnswers = draft.wrongs(answer).flatMap((wrong) => stated(wrong, judged(wrong.built)));
  const isSoundThere = wrongAnswers.some(({ findings }) => findings.length === 0);
  return wrongAnswers.length >= leastWrong && isSoundThere
    ? { ...base, modelAnswers: [answer], wrongAnswers }
    : undefined;
}

const isRight = ({ proposal, findings, undetermined }: Verdict): boolean =>
  proposal === "met" && undetermined.length === 0 && findings.every(({ weight }) => weight === "note");

/** A wrong answer as a scenario states it, where it breaks the rules that it is there for and no other. */
function stated(
  { name, built, breaks }: WrongDraft,
  { findings, requirements, undetermined, proposal }: Verdict,
): Scenario["wrongAnswers"] {
  const told = findings.filter(({ weight }) => weight !== "note");
  const isAsMeant =
    undetermined.length === 0 &&
    proposal !== "met" &&
    told.every(({ rule }) => breaks.includes(rule)) &&
    told.length > 0 === breaks.length > 0;
  if (!isAsMeant) return [];
  const notMet = requirements.flatMap(({ answer }, index) => (answer === "met" ? [] : [index]));
  return [
    {
      name,
      built,
      findings: told.map(({ rule, variant }) => ({ rule, variant })),
      ...(notMet.length > 0 ? { notMet } : {}),
    },
  ];
}
