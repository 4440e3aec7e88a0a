import type { BoardDescription } from "../board/board.schema.ts";
import { stationOf } from "../board/ids.ts";
import { isToMend } from "../rules/rule.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { Requirement } from "../wiring/wiring.schema.ts";
import type { Judge } from "./answer-misses.ts";
import { answerMoves } from "./answer-moves.ts";
import { changed } from "./change.ts";
import { routes } from "./plan-route.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";
import { choicesOf } from "./setting-choices.ts";
import { toWiring } from "./to-wiring.ts";

/** So many states are gone on from in each round, and so many rounds and verdicts there are at most. */
const most = { followed: 4, rounds: 24, tried: 4000 };

/** What is asked of the wiring, not of what is measured or named. */
export const isOfWiring = ({ kind }: Requirement): boolean => kind !== "readings" && kind !== "fault-named";

/** How far something is from right: what is asked counts by its places, what is wrong by its kinds. */
const cost = { place: 4, whole: 6, danger: 5, fix: 3, again: 0.2, missing: 1, cable: 0.05, crowd: 0.1 };

interface State {
  built: Built;
  verdict: Verdict;
  far: number;
}

export interface Sought {
  /** A wiring that meets all that is asked, where one was found. */
  built?: Built;
  /** Of the wiring that came nearest: the requirements, by index, that were not met together. */
  notMet: number[];
  /** How many verdicts the search took. */
  triedCount: number;
}

/**
 * Looks for a wiring that does what a task asks with nothing to mend, from what is there at the start, without a look
 * at its answers: move by move, going on from the states that are least far from right. Readings and names of faults
 * are left to the learner. Repeatable: nothing in it is drawn.
 */
export function findAnswer(
  scenario: StrippedScenario,
  judge: Judge,
  board: Pick<BoardDescription, "stations">,
): Sought {
  const inTask = new Set(scenario.stations.map(({ id }) => id));
  const small = { stations: board.stations.filter(({ id }) => inTask.has(id)) };
  const asked = { ...scenario, requirements: scenario.requirements.filter(isOfWiring) };
  const isThrifty = asked.requirements.some(({ kind }) => kind === "thrift");
  const routeBetween = routes(scenario.plan);
  const seen = new Set<string>();
  let triedCount = 0;
  const stateOf = (built: Built): State => {
    triedCount += 1;
    const judged = (requirements: Requirement[]): Verdict =>
      judge(toWiring({ scenario: { ...asked, requirements }, board: small, built, routeBetween }));
    // Whether a thinner cable would do takes a verdict a cable: it is asked once nothing else is wrong.
    const first = judged(asked.requirements.filter(({ kind }) => kind !== "thrift"));
    const verdict = isThrifty && isSound(first) ? judged(asked.requirements) : first;
    return { built, verdict, far: farOf(verdict, built) + (isThrifty && verdict === first ? cost.whole : 0) };
  };
  let front = [stateOf(atFirst(scenario))];
  let [nearest] = front;
  let isStuck = false;
  for (let round = 0; round < most.rounds && nearest && !isRight(nearest); round += 1) {
    const next: State[] = [];
    const nearestBefore = nearest;
    for (const state of front)
      for (const move of answerMoves(asked, small, { ...state, isStuck })) {
        const built = changed(state.built, move);
        const key = keyOf(built);
        if (seen.has(key) || triedCount >= most.tried) continue;
        seen.add(key);
        next.push(stateOf(built));
      }
    front = next.toSorted((a, b) => a.far - b.far).slice(0, most.followed);
    nearest = [nearest, ...front].reduce((a, b) => (b.far < a.far ? b : a));
    // Where no move alone brings it nearer, two at once may.
    isStuck = nearest === nearestBefore;
    if (isStuck && !front.includes(nearest)) front = [nearest, ...front];
  }
  if (!nearest) return { notMet: [], triedCount };
  return {
    ...(isRight(nearest) ? { built: nearest.built } : {}),
    notMet: notMetOf(nearest.verdict, scenario),
    triedCount,
  };
}

/** What is there at the start, each setting that the learner chooses at the first there is to choose. */
function atFirst(scenario: StrippedScenario): Built {
  const settings = Object.fromEntries(
    scenario.stations.flatMap(({ id, chosen = [] }) =>
      chosen.length === 0
        ? []
        : [
            [
              id,
              {
                ...Object.fromEntries(chosen.map((key) => [key, choicesOf(scenario, key)[0]])),
                ...scenario.asFound.settings?.[id],
              },
            ] as const,
          ],
    ),
  );
  return { ...scenario.asFound, settings: { ...scenario.asFound.settings, ...settings } };
}

const isSound = ({ proposal, findings }: Verdict): boolean =>
  proposal === "met" && !findings.some(({ weight }) => isToMend(weight));

const isRight = ({ verdict }: State): boolean => isSound(verdict);

function farOf({ findings, undetermined, requirements }: Verdict, { cables }: Built): number {
  const wrong = findings.filter(({ weight }) => isToMend(weight));
  const kinds = new Map(wrong.map(({ rule, variant, weight }) => [`${rule}/${variant}`, weight]));
  const kindsFar = [...kinds.values()].reduce(
    (sum, weight) => sum + (weight === "danger" ? cost.danger : cost.fix),
    cost.again * wrong.length,
  );
  const askedFar = requirements
    .filter(({ answer }) => answer !== "met")
    .reduce(
      (sum, { requirement, places }) =>
        sum + ("stations" in requirement ? cost.place * Math.max(1, places.length) : cost.whole),
      0,
    );
  const ends = new Map<string, number>();
  for (const end of cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]))
    ends.set(end, (ends.get(end) ?? 0) + 1);
  const crowds = [...ends.values()].filter((count) => count > 2).length;
  return (
    kindsFar +
    askedFar +
    cost.missing * undetermined.length +
    cost.cable * cables.length +
    cost.crowd * crowds
  );
}

const keyOf = ({ cables, settings }: Built): string =>
  JSON.stringify([cables.map((cable) => JSON.stringify(cable)).toSorted(), settings]);

/** By the index that they have in the scenario; what is measured or named is not among them. */
const notMetOf = ({ requirements }: Verdict, scenario: StrippedScenario): number[] =>
  scenario.requirements.flatMap((requirement, index) => {
    const isMet = requirements.some((one) => one.requirement === requirement && one.answer === "met");
    return isOfWiring(requirement) && !isMet ? [index] : [];
  });
