import type { BoardDescription } from "../board/board.schema.ts";
import type { StationId } from "../board/ids.ts";
import { isToMend } from "../rules/rule.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { Requirement } from "../wiring/wiring.schema.ts";
import type { Judge } from "./answer-misses.ts";
import { answerMoves } from "./answer-moves.ts";
import { changed } from "./change.ts";
import { everyWiring } from "./every-wiring.ts";
import { cost, farOf, sortOf } from "./how-far.ts";
import { linkedStations, stationsAsked } from "./linked-stations.ts";
import { routes } from "./plan-route.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";
import { choicesOf } from "./setting-choices.ts";
import { toWiring } from "./to-wiring.ts";

/**
 * So many states are gone on from in each round, so many that look alike in all, and so many verdicts are taken. Where
 * it takes long and there are no more wirings than so many, each of them is judged instead.
 */
const most = { followed: 4, ofSort: 6, triedSoon: 300, tried: 4000, all: 2000 };

/** What is asked of the wiring, not of what is measured or named. */
export const isOfWiring = ({ kind }: Requirement): boolean => kind !== "readings" && kind !== "fault-named";

interface State {
  built: Built;
  verdict: Verdict;
  far: number;
  /** What is wrong and what is missing: of states that are alike in this the one leads where the others lead. */
  sort: string;
}

export interface Sought {
  /** A wiring that meets all that is asked, where one was found. */
  built?: Built;
  /** Of the wiring that came nearest: the requirements, by index, that were not met together. */
  notMet: number[];
  /** How many verdicts the search took. */
  triedCount: number;
  /** Nothing was found though every wiring that whole cables can make was judged: there is none. */
  isExhaustive: boolean;
}

/**
 * Looks for a wiring that does what a task asks with nothing to mend, from what is there at the start, without a look
 * at its answers: move by move, going on from the states that are least far from right. Readings and names of faults
 * are left to the learner. Where it finds none soon, and there are few enough wirings, it judges every one. Repeatable:
 * nothing in it is drawn.
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
  const lengthM = (one: StationId, other: StationId): number => routeBetween(one, other)?.lengthM ?? Infinity;
  const wantLinked = new Set(asked.requirements.flatMap(stationsAsked));
  const apartCount = (built: Built): number => {
    const linked = linkedStations(asked, built);
    return [...wantLinked].filter((id) => !linked.has(id)).length;
  };
  const seen = new Set<string>();
  let triedCount = 0;
  const stateOf = (built: Built): State => {
    triedCount += 1;
    const judged = (requirements: Requirement[]): Verdict =>
      judge(toWiring({ scenario: { ...asked, requirements }, board: small, built, routeBetween }));
    // Whether a thinner cable would do takes a verdict a cable: it is asked once nothing else is wrong.
    const first = judged(asked.requirements.filter(({ kind }) => kind !== "thrift"));
    const verdict = isThrifty && isSound(first) ? judged(asked.requirements) : first;
    const apart = apartCount(built);
    const unasked = isThrifty && verdict === first ? cost.whole : 0;
    const far = farOf(verdict, built) + cost.apart * apart + unasked;
    return { built, verdict, far, sort: sortOf(verdict, apart) };
  };
  const start = stateOf(atFirst(scenario));
  const done = ({ built, verdict }: State, isExhaustive = false): Sought => ({
    ...(isSound(verdict) ? { built } : {}),
    notMet: notMetOf(verdict, scenario),
    triedCount,
    isExhaustive,
  });
  let nearest = start;
  let isStuck = false;
  let open = [start];
  const widened = new Set<State>();
  const followedOf = new Map<string, number>();
  const searched = (triedMost: number): State | undefined => {
    while (open.length > 0 && triedCount < triedMost) {
      const front = nextOf(open, followedOf);
      open = open.filter((state) => !front.includes(state));
      if (isStuck && !widened.has(nearest)) front.unshift(nearest);
      if (isStuck) widened.add(nearest);
      // Every sort has had its turns: once more from the nearest.
      if (front.length === 0) followedOf.clear();
      const nearestBefore = nearest;
      for (const state of front)
        for (const move of answerMoves(asked, small, { ...state, isStuck, lengthM })) {
          const built = changed(state.built, move);
          const key = keyOf(built);
          if (seen.has(key) || triedCount >= triedMost) continue;
          seen.add(key);
          const next = stateOf(built);
          if (isSound(next.verdict)) return next;
          open.push(next);
          if (next.far < nearest.far) nearest = next;
        }
      // Where no move alone brings it nearer, two at once may.
      isStuck = nearest === nearestBefore;
    }
    return undefined;
  };
  if (isSound(start.verdict)) return done(start);
  const soon = searched(most.triedSoon);
  if (soon) return done(soon);
  const all = everyWiring(asked, small, start.built, most.all);
  if (!all) return done(searched(most.tried) ?? nearest);
  for (const built of all) {
    const one = stateOf(built);
    if (isSound(one.verdict)) return done(one);
  }
  return done(nearest, true);
}

/** The states to go on from: the nearest of each sort, and no sort for ever. */
function nextOf(open: readonly State[], followedOf: Map<string, number>): State[] {
  const front: State[] = [];
  const sorts = new Set<string>();
  for (const state of open.toSorted((a, b) => a.far - b.far)) {
    const followed = followedOf.get(state.sort) ?? 0;
    if (front.length === most.followed) break;
    if (sorts.has(state.sort) || followed >= most.ofSort) continue;
    sorts.add(state.sort);
    followedOf.set(state.sort, followed + 1);
    front.push(state);
  }
  return front;
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

const keyOf = ({ cables, settings }: Built): string =>
  JSON.stringify([cables.map((cable) => JSON.stringify(cable)).toSorted(), settings]);

/** By the index that they have in the scenario; what is measured or named is not among them. */
const notMetOf = ({ requirements }: Verdict, scenario: StrippedScenario): number[] =>
  scenario.requirements.flatMap((requirement, index) => {
    const isMet = requirements.some((one) => one.requirement === requirement && one.answer === "met");
    return isOfWiring(requirement) && !isMet ? [index] : [];
  });
