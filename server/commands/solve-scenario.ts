import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { Judge } from "../../shared/scenario/answer-misses.ts";
import { cannotBeMet } from "../../shared/scenario/cannot-be-met.ts";
import { findAnswer, isOfWiring } from "../../shared/scenario/find-answer.ts";
import type { Built, Scenario } from "../../shared/scenario/scenario.schema.ts";
import { strip } from "../../shared/scenario/strip.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";

/** What a search without a look at the answers came to: said of a scenario that can be solved, or what is amiss. */
export type Solved = { said: string } | { amiss: string };

/**
 * Whether a scenario can be solved on a board: a wiring is looked for that meets all that is asked of it, written as a
 * wiring file and judged from there. Where none is found, says which requirements cannot be met together.
 */
export function solveScenario(
  scenario: Scenario,
  judge: Judge,
  board: Pick<BoardDescription, "stations">,
): Solved {
  const asked = strip(scenario);
  const { built, triedCount } = findAnswer(asked, judge, board);
  if (built) {
    const amiss = replayed(scenario, built, judge, board);
    return amiss === undefined
      ? { said: `solved by search with ${built.cables.length} cables (${triedCount} verdicts)` }
      : { amiss: `the wiring that was found is not right as a wiring file: ${amiss}` };
  }
  const indexes = cannotBeMet(
    asked,
    (requirements) => findAnswer({ ...asked, requirements }, judge, board).built !== undefined,
  );
  const told = indexes.map((index) => `requirements[${index}] (${asked.requirements[index]?.kind})`);
  return {
    amiss:
      told.length > 0
        ? `no wiring was found that meets these together: ${told.join(", ")}`
        : "no wiring was found without a danger or a fix, whatever is asked",
  };
}

/** What is wrong with a wiring once it has been through its file; undefined where nothing is. */
function replayed(
  scenario: Scenario,
  built: Built,
  judge: Judge,
  board: Pick<BoardDescription, "stations">,
): string | undefined {
  const wiring = toWiring({ scenario: strip(scenario), board, built });
  const text = JSON.stringify({ ...wiring, wants: wiring.wants?.filter(isOfWiring) });
  const read = readWiring(text, scenario.id);
  if (!read.ok) return read.problems.map(({ message }) => message).join(", ");
  const { findings, proposal } = judge(read.value);
  const wrong = findings.filter(({ weight }) => isToMend(weight)).map(({ id }) => id);
  return proposal === "met" && wrong.length === 0 ? undefined : [proposal, ...wrong].join(", ");
}
