import { isToMend } from "../rules/rule.ts";
import type { Verdict } from "../rules/verdict.ts";
import { type Change, changed, changesTo, inOrder } from "./change.ts";
import { nearbyChanges, type Wired } from "./possible-changes.ts";
import type { Scenario } from "./scenario.schema.ts";
import { routes } from "./plan-route.ts";
import { toWiring, type ToWiringInput } from "./to-wiring.ts";
import type { Judge } from "./answer-misses.ts";
import { strip } from "./strip.ts";

/** So many verdicts are asked for at most in looking for something less than the way to a model answer. */
const mostTried = 64;
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

/**
 * A least set of changes after which what is built is right and the task done: none of them can be left out. The way
 * to each model answer with all that is needless left out is one; fewer changes near what the verdict names are looked
 * for first. Undefined where no board change does it (readings that are missing, say).
 */
export function leastChange(
  wired: Omit<Wired, "scenario"> & { scenario: Scenario; judge: Judge } & Pick<ToWiringInput, "routeBetween">,
): Change[] | undefined {
  const { board, built, judge } = wired;
  const scenario = strip(wired.scenario);
  const routeBetween = wired.routeBetween ?? routes(scenario.plan);
  const after = (changes: readonly Change[]): Verdict =>
    judge(toWiring({ scenario, board, built: changed(built, changes), routeBetween }));
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

/** What is left when each change that is not needed has been left out, the last ones first. */
function needed(changes: readonly Change[], after: (changes: readonly Change[]) => Verdict): Change[] {
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
function fewer(
  wired: Wired,
  after: (changes: readonly Change[]) => Verdict,
  now: Verdict,
  thanCount: number,
): Change[] | undefined {
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
