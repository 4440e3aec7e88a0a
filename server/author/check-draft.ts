import type { BoardDescription } from "../../shared/board/board.schema.ts";
import {
  type AnswerCheck,
  type DraftLack,
  draftLacks,
  type DraftView,
} from "../../shared/protocol/author-view.ts";
import type { FieldProblem } from "../../shared/reading/problem.ts";
import type { StationNames } from "../../shared/rules/wording/name-place.ts";
import { wordFinding } from "../../shared/rules/wording/word-finding.ts";
import { wordRequirement } from "../../shared/rules/wording/word-requirement.ts";
import { wordUndetermined } from "../../shared/rules/wording/word-undetermined.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { answerMisses, type Judge } from "../../shared/scenario/answer-misses.ts";
import { askProblems } from "../../shared/scenario/ask-problems.ts";
import { writeTask } from "../../shared/scenario/exercise/write-task.ts";
import { lacking } from "../../shared/scenario/fits-board.ts";
import { routes } from "../../shared/scenario/plan-route.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import type { Built, Scenario } from "../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import type { Language } from "../../shared/text/languages.ts";
import { taskLines } from "../../shared/text/task-lines.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { stationNames } from "../attempt/station-names.ts";

type Board = Pick<BoardDescription, "stations">;

/** What a draft is judged with: as the bench itself would. */
export interface DraftParts {
  board: Board;
  judge: Judge;
  language: Language;
}

/** An answer of a draft with the verdict on it. */
interface Judged {
  kind: AnswerCheck["kind"];
  index: number;
  wiring: Wiring;
  verdict: Verdict;
}

/**
 * What the bench says of a draft that could be read: what it has not got yet, what else stands against it, what its
 * requirements ask and what each of its answers would be told. The draft comes back as whole as it can be.
 */
export function checkDraft(draft: Scenario, { board, judge, language }: DraftParts): DraftView {
  const routeBetween = routes(draft.plan);
  const wiringOf = (built: Built): Wiring => toWiring({ scenario: draft, board, built, routeBetween });
  const judgedAs =
    (kind: Judged["kind"]) =>
    (built: Built, index: number): Judged => {
      const wiring = wiringOf(built);
      return { kind, index, wiring, verdict: judge(wiring) };
    };
  const models = draft.modelAnswers.map(judgedAs("model"));
  const wrongs = draft.wrongAnswers.map(({ built }) => built).map(judgedAs("wrong"));
  const { stations } = wiringOf(draft.asFound);
  const names = stationNames(draft, language);
  const scenario = completed(draft, stations, wrongs);
  const answers = [...models, ...wrongs].map((judged) => answerCheck(judged, scenario, names, language));
  const lacks = lacksOf(scenario, answers);
  return {
    scenario,
    lacks,
    // Until it has all its parts, that some are not there is all that would be said.
    problems: lacks.length > 0 ? [] : problemsOf(scenario, board, judge),
    asked: scenario.requirements.map((one) => wordRequirement(one, { stations }, language, names)),
    answers,
  };
}

/**
 * A draft with what follows from it written into it: the task's text from what is asked, and what each wrong answer has
 * to be told from what the rules say of it.
 */
function completed(draft: Scenario, stations: Wiring["stations"], wrongs: readonly Judged[]): Scenario {
  const opening = { en: taskLines(draft.task.en).opening, pl: taskLines(draft.task.pl).opening };
  const { task, asks } = writeTask(opening, draft, { stations });
  const wrongAnswers = draft.wrongAnswers.map(({ name, built }, at) => {
    const { findings = [], requirements = [] } = wrongs[at]?.verdict ?? {};
    const notMet = requirements.flatMap(({ answer }, index) => (answer === "met" ? [] : [index]));
    return {
      name,
      built,
      findings: findings.filter(weighty).map(({ rule, variant }) => ({ rule, variant })),
      ...(notMet.length > 0 ? { notMet } : {}),
    };
  });
  return { ...draft, task, asks, wrongAnswers, isExistingCircuit: draft.asFound.cables.length > 0 };
}

const weighty = ({ weight }: Verdict["findings"][number]): boolean => weight !== "note";

function answerCheck(
  { kind, index, wiring, verdict }: Judged,
  scenario: Scenario,
  names: StationNames,
  language: Language,
): AnswerCheck {
  const { findings, undetermined, requirements, proposal } = verdict;
  const notMet = requirements.flatMap(({ answer }, at) => {
    const asked = scenario.requirements[at];
    return answer === "met" || !asked ? [] : [wordRequirement(asked, wiring, language, names)];
  });
  const isRight = kind === "model" ? proposal === "met" && !findings.some(weighty) : proposal !== "met";
  return {
    ...{ kind, index, proposal, notMet },
    findings: findings.map((finding) => ({
      weight: finding.weight,
      title: wordFinding(finding, wiring, language, names).title,
    })),
    undetermined: undetermined.map((one) => wordUndetermined(one, wiring, language, names)),
    isAsMeant: isRight && undetermined.length === 0,
  };
}

function lacksOf(scenario: Scenario, answers: readonly AnswerCheck[]): DraftLack[] {
  const { stations, plan, requirements } = scenario;
  const placed = new Set(plan.places.map(({ station }) => station));
  const of = (wanted: AnswerCheck["kind"]) => answers.filter(({ kind }) => kind === wanted);
  const isSound = ({ findings }: AnswerCheck): boolean => !findings.some(({ weight }) => isToMend(weight));
  const areAsMeant = (all: readonly AnswerCheck[], least: number): boolean =>
    all.length >= least && all.every(({ isAsMeant }) => isAsMeant);
  const isThere: Record<DraftLack, boolean> = {
    stations: stations.some(({ kind }) => kind === "way") && stations.length >= 2,
    walls: plan.rooms.length > 0 && plan.walls.length > 0,
    places: stations.every(({ id }) => placed.has(id)),
    requirements: requirements.length > 0,
    "model-answer": areAsMeant(of("model"), 1),
    "wrong-answers": areAsMeant(of("wrong"), 2),
    "sound-wrong-answer": of("wrong").some((answer) => answer.isAsMeant && isSound(answer)),
  };
  return draftLacks.filter((lack) => !isThere[lack]);
}

/** What `npm run check-scenarios` would say of it on this board. */
function problemsOf(scenario: Scenario, board: Board, judge: Judge): FieldProblem[] {
  const read = readScenario(scenario, scenario.id);
  if (!read.ok) return read.problems.map(({ field, message, remedy }) => ({ field, message, remedy }));
  const lacks = lacking(scenario, board);
  if (lacks.length > 0)
    return lacks.map(({ station }) => ({
      field: "stations",
      message: `this board has not got what is asked for at ${station}`,
      remedy: "Take it off the plan, or ask for less.",
    }));
  return [
    ...askProblems(scenario, judge, [board]),
    ...answerMisses(scenario, judge, board).map(({ field, form, expected, actual }) => ({
      field,
      message: `expected ${expected}, found ${actual} (${form})`,
      remedy: "Wire it again.",
    })),
  ];
}
