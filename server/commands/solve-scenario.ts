import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { Judge } from "../../shared/scenario/answer-misses.ts";
import { cannotBeMet } from "../../shared/scenario/cannot-be-met.ts";
import { findAnswer, isOfWiring, type Sought } from "../../shared/scenario/find-answer.ts";
import type { Built, Scenario } from "../../shared/scenario/scenario.schema.ts";
import { strip } from "../../shared/scenario/strip.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";

/** What a search without a look at the answers came to: said of a scenario that can be solved, or what is amiss. */
export type Solved = { said: string } | { amiss: string };

/**
 * Whether a scenario can be solved on a board: a wiring is looked for that meets all that is asked of it, written as a
 * wiring file and judged from there. Where none is found, says a least set of requirements that no wiring was found to
 * meet together, and whether every wiring was judged or there may be one yet.
 */
export function solveScenario(
  scenario: Scenario,
  judge: Judge,
  board: Pick<BoardDescription, "stations">,
): Solved {
  const asked = strip(scenario);
  const first = findAnswer(asked, judge, board);
  const { built, triedCount } = first;
  if (built) {
    const amiss = replayed(scenario, built, judge, board);
    return amiss === undefined
      ? { said: `solved by search with ${built.cables.length} cables (${triedCount} verdicts)` }
      : { amiss: `the wiring that was found is not right as a wiring file: ${amiss}` };
  }
  // The search that came last to nothing is the one for those that are left.
  let last: Sought = first;
  const indexes = cannotBeMet(asked, (requirements) => {
    const sought = findAnswer({ ...asked, requirements }, judge, board);
    if (!sought.built) last = sought;
    return sought.built !== undefined;
  });
  const told = indexes
    .map((index) => `requirements[${index}] (${asked.requirements[index]?.kind})`)
    .join(", ");
  if (last.isExhaustive)
    return {
      amiss: told
        ? `no wiring of whole cables meets these together, every one was judged: ${told}`
        : "no wiring of whole cables is without a danger or a fix, every one was judged",
    };
  return {
    amiss: told
      ? `no wiring was found that meets these together (there may be one, ${last.triedCount} were judged): ${told}`
      : `no wiring was found without a danger or a fix, whatever is asked (${last.triedCount} were judged)`,
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
