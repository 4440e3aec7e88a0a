import { isToMend } from "../rules/rule.ts";
import type { BoardDescription } from "../board/board.schema.ts";
import type { FieldProblem } from "../reading/problem.ts";
import { languages } from "../text/languages.ts";
import { taskLines } from "../text/task-lines.ts";
import { hasRoomFor, type Judge } from "./answer-misses.ts";
import type { Scenario } from "./scenario.schema.ts";
import { toWiring } from "./to-wiring.ts";

/**
 * Whether a scenario holds learners to its text: each numbered line of the task, in every language, stands in `asks`
 * with the requirements that hold it; no requirement stands in none; and at least one wrong answer is sound, with
 * nothing to put right and nothing that cannot be told, and yet not met. Gives all that is amiss.
 */
export function askProblems(
  scenario: Scenario,
  judge: Judge,
  boards: readonly Pick<BoardDescription, "stations">[],
): FieldProblem[] {
  const { asks } = scenario;
  if (!asks)
    return [
      {
        field: "asks",
        message: "it is missing",
        remedy: "Name each numbered line of the task with the requirements that hold it.",
      },
    ];
  return [
    ...numberProblems(scenario, asks),
    ...unaskedProblems(scenario, asks),
    ...roomProblems(scenario, boards),
    ...soundProblems(scenario, judge, boards),
  ];
}

type Asks = NonNullable<Scenario["asks"]>;

function numberProblems({ task }: Scenario, asks: Asks): FieldProblem[] {
  const counted = asks.map((_, index) => index + 1).join(", ");
  const numbers = asks.map(({ number }) => number).join(", ");
  return [
    ...(numbers === counted
      ? []
      : [{ field: "asks", message: `the numbers are ${numbers}`, remedy: `Count ${counted}.` }]),
    ...languages.flatMap((language): FieldProblem[] => {
      const said = taskLines(task[language]).asks.map(({ number }) => number);
      if (said.join(", ") === counted) return [];
      return [
        {
          field: `task.${language}`,
          message: `it numbers ${said.length > 0 ? said.join(", ") : "nothing"}, and asks names ${counted}`,
          remedy: 'Write what is asked for on lines of their own that begin "1. ", "2. " and so on.',
        },
      ];
    }),
  ];
}

function unaskedProblems({ requirements }: Scenario, asks: Asks): FieldProblem[] {
  const held = new Set(asks.flatMap(({ heldBy }) => heldBy));
  return requirements.flatMap((_, index): FieldProblem[] =>
    held.has(index)
      ? []
      : [
          {
            field: `requirements[${index}]`,
            message: "no line of the task asks for it",
            remedy: "Name it in asks, and say it in the task.",
          },
        ],
  );
}

function roomProblems(
  scenario: Scenario,
  boards: readonly Pick<BoardDescription, "stations">[],
): FieldProblem[] {
  return scenario.wrongAnswers.flatMap(({ built }, index): FieldProblem[] =>
    boards.some((board) => hasRoomFor(built, scenario, board))
      ? []
      : [
          {
            field: `wrongAnswers[${index}]`,
            message: "no board has all the entries it uses",
            remedy: "Use other entries.",
          },
        ],
  );
}

function soundProblems(
  scenario: Scenario,
  judge: Judge,
  boards: readonly Pick<BoardDescription, "stations">[],
): FieldProblem[] {
  const isSoundMiss = (board: Pick<BoardDescription, "stations">): boolean =>
    scenario.wrongAnswers.some(({ built }) => {
      if (!hasRoomFor(built, scenario, board)) return false;
      const { findings, undetermined, proposal } = judge(toWiring({ scenario, board, built }));
      const isSound = findings.every(({ weight }) => !isToMend(weight));
      return isSound && undetermined.length === 0 && proposal !== "met";
    });
  if (boards.some(isSoundMiss)) return [];
  return [
    {
      field: "wrongAnswers",
      message: "none is sound and misses the task",
      remedy: "Add an answer with nothing to put right in it that does not do what the task asks.",
    },
  ];
}
