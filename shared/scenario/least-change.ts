import { isToMend } from "../rules/rule.ts";
import type { BoardDescription } from "../board/board.schema.ts";
import { type StationId, stationOf } from "../board/ids.ts";
import type { Verdict } from "../rules/verdict.ts";
import { type Change, changed, changesTo, inOrder } from "./change.ts";
import { nearbyChanges, type Wired } from "./possible-changes.ts";
import type { Scenario } from "./scenario.schema.ts";
import { routes } from "./plan-route.ts";
import { toWiring, type ToWiringInput } from "./to-wiring.ts";
import type { Judge } from "./answer-misses.ts";
import { strip } from "./strip.ts";

/** So many verdicts are asked for at most in looking for something less than the way to a model answer. */
const mostTried = 40;
/** Where no model answer fits the board, no more changes than so many are looked for. */
const mostLookedFor = 4;
/** Of the changes that help, so many are gone on from. */
const mostFollowed = 4;

/** True where nothing stands against it and the task is done. */
const isRight = ({ proposal, findings }: Verdict): boolean =>
  proposal === "met" && !findings.some(({ weight }) => isToMend(weight));

/** How much is still wrong. */
const badness = ({ findings, requirements }: Verdict): number =>
  findings.filter(({ weight }) => isToMend(weight)).length +
  requirements.filter(({ answer }) => answer !== "met").length;

type Look = (changes: readonly Change[]) => Verdict;

/**
 * A least set of changes after which what is built is right and the task done: none of them can be left out. The way
 * to each model answer with all that is needless left out is one; fewer changes near what the verdict names are looked
 * for first. Undefined where no board change does it (readings that are missing, say).
 */
export function leastChange(
  wired: Omit<Wired, "scenario"> & { scenario: Scenario; judge: Judge } & Pick<ToWiringInput, "routeBetween">,
): Change[] | undefined {
  const { built } = wired;
  const scenario = strip(wired.scenario);
  const board = inUse(wired);
  const after = lookOn({ ...wired, scenario, board });
  const now = after([]);
  if (isRight(now)) return [];
  const ways = wired.scenario.modelAnswers
    .map((model) => changesTo(built, model))
    .filter((changes) => isRight(after(changes)))
    .map((changes) => needed(changes, after));
  const [shortest] = ways.toSorted((a, b) => a.length - b.length);
  const found = fewer({ scenario, board, built }, after, now, shortest?.length ?? mostLookedFor) ?? shortest;
  return found && inOrder(found);
}

/** The stations of the task, and those that something is plugged at. Of the others the rules have nothing to say. */
function inUse({
  scenario,
  board,
  built,
}: Omit<Wired, "scenario"> & { scenario: Scenario }): Pick<BoardDescription, "stations"> {
  const used = new Set<StationId>([
    ...scenario.stations.map(({ id }) => id),
    ...[built, ...scenario.modelAnswers].flatMap(({ cables }) =>
      cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]),
    ),
  ]);
  return { stations: board.stations.filter(({ id }) => used.has(id)) };
}

/**
 * Judges what is built after some changes, each outcome once. Whether a smaller cable would do takes a verdict a cable:
 * it is asked once nothing else is wrong.
 */
function lookOn({ scenario, board, built, judge, routeBetween }: Wired & LookingWith): Look {
  const ways = routeBetween ?? routes(scenario.plan);
  const isThrifty = scenario.requirements.some(({ kind }) => kind === "thrift");
  const others = scenario.requirements.filter(({ kind }) => kind !== "thrift");
  const known = new Map<string, Verdict>();
  return (changes) => {
    const next = changed(built, changes);
    const text = JSON.stringify([
      next.cables.map((cable) => JSON.stringify(cable)).toSorted(),
      Object.entries(next.settings ?? {}),
    ]);
    const seen = known.get(text);
    if (seen) return seen;
    const judged = (requirements: typeof others): Verdict =>
      judge(toWiring({ scenario: { ...scenario, requirements }, board, built: next, routeBetween: ways }));
    const first = judged(isThrifty ? others : scenario.requirements);
    const verdict = isThrifty && isRight(first) ? judged(scenario.requirements) : first;
    known.set(text, verdict);
    return verdict;
  };
}

type LookingWith = { judge: Judge } & Pick<ToWiringInput, "routeBetween">;

/** What is left when each change that is not needed has been left out, the last ones first. */
function needed(changes: readonly Change[], after: Look): Change[] {
  return changes.toReversed().reduce<Change[]>(
    (kept, change) => {
      const without = kept.filter((one) => one !== change);
      return isRight(after(without)) ? without : kept;
    },
    [...changes],
  );
}

interface Tried {
  changes: Change[];
  verdict: Verdict;
}

/** Less changes than so many, found breadth first from the most promising; undefined where none was found. */
function fewer(wired: Wired, after: Look, now: Verdict, thanCount: number): Change[] | undefined {
  let left = mostTried;
  let front: Tried[] = [{ changes: [], verdict: now }];
  for (let count = 1; count < thanCount; count += 1) {
    const tried: Tried[] = [];
    for (const { changes, verdict } of front) {
      const built = changed(wired.built, changes);
      for (const change of nearbyChanges({ ...wired, built }, verdict)) {
        if (left === 0) return undefined;
        left -= 1;
        const next = { changes: [...changes, change], verdict: after([...changes, change]) };
        if (isRight(next.verdict)) return needed(next.changes, after);
        tried.push(next);
      }
    }
    front = tried.toSorted((a, b) => badness(a.verdict) - badness(b.verdict)).slice(0, mostFollowed);
  }
  return undefined;
}
