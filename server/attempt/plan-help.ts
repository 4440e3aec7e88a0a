import type { Fact, PlanView, Said } from "../../shared/protocol/bench-view.ts";
import type { PlanHelpKey } from "../../shared/protocol/said-keys.ts";
import { supply } from "../../shared/trade/supply.ts";
import { roundedA } from "./rounded-current.ts";
import type { Answers, PlanHelp, PlanItem } from "./plan-item.ts";
import type { FuseTask, PlanTask } from "./plan-task.ts";

const said = (key: PlanHelpKey, facts: Record<string, Fact> = {}): Said => ({ key, facts });

export const currentHelp =
  (task: PlanTask): PlanHelp =>
  () =>
    task.cookingW > 0
      ? {
          nudge: said("plan.nudge.cooking"),
          relation: said(
            task.hasSocketOutletInCookerControl ? "plan.relation.cooking-outlet" : "plan.relation.cooking",
            { fullA: roundedA(task.cookingW / supply.nominalV) },
          ),
        }
      : {
          nudge: said("plan.nudge.designCurrentA"),
          relation: said("plan.relation.designCurrentA", { totalW: task.totalW }),
        };

export const deviceHelp =
  (designCurrentA: number): PlanHelp =>
  (answer) =>
    answer < designCurrentA
      ? {
          nudge: said("plan.nudge.device-low"),
          relation: said("plan.relation.device-low", { answerA: answer, designCurrentA }),
        }
      : {
          nudge: said("plan.nudge.device-high"),
          relation: said("plan.relation.device-high", { answerA: answer }),
        };

export const tabulatedHelp =
  (task: PlanTask, deviceFor: (answers: Answers) => number | undefined): PlanHelp =>
  (_, answers) => {
    const factors = task.factorsFor(deviceFor(answers));
    return {
      nudge: said(task.isRing ? "plan.nudge.tabulated-ring" : "plan.nudge.tabulatedCurrentA"),
      relation: factors
        ? said("plan.relation.tabulatedCurrentA", { ...factors })
        : said("plan.nudge.tabulatedCurrentA"),
    };
  };

export const sizeHelp =
  (task: PlanTask, deviceFor: (answers: Answers) => number | undefined): PlanHelp =>
  (answer, answers) => {
    const nudge = said("plan.nudge.csaMm2", { method: task.method });
    const neededA = task.tabulatedFor(deviceFor(answers));
    const tableA = task.tableA(answer);
    const isShort = neededA !== undefined && tableA !== undefined && tableA < neededA;
    const relation = isShort
      ? said("plan.relation.csaMm2", {
          csaMm2: answer,
          tableA,
          neededA: roundedA(neededA),
          method: task.method,
        })
      : said("plan.relation.size-other", { csaMm2: answer });
    return { nudge, relation };
  };

export const fuseHelp =
  (task: FuseTask): PlanHelp =>
  (answer) => ({
    nudge: said("plan.nudge.fuseRatingA"),
    relation: said(answer > task.usualA ? "plan.relation.fuse-high" : "plan.relation.fuse-low", {
      answerA: answer,
    }),
  });

/**
 * What is said of the last answer to a question: right, or for the first wrong one a nudge, for the second the
 * relation with its numbers, and from the third on the answer. An answer given again is not another try.
 */
export function resultOf(
  item: PlanItem,
  given: readonly number[],
  answers: Answers,
): NonNullable<PlanView["questions"][number]["result"]> | undefined {
  const answer = given.at(-1);
  if (answer === undefined) return undefined;
  const result = item.mark(answer, answers);
  if (result.isRight) return result;
  const wrongCount = new Set(given.filter((one) => !item.mark(one, answers).isRight)).size;
  const { nudge, relation } = item.help(answer, answers);
  if (wrongCount === 1) return { isRight: false, reason: nudge };
  // The relation that a rule has for this answer says more than the general one.
  if (wrongCount === 2) return { isRight: false, reason: result.relation ?? relation };
  return { isRight: false, reason: result.reason };
}
