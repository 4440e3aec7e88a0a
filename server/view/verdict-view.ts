import type { FindingView, VerdictView } from "../../shared/protocol/bench-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Finding, Verdict } from "../../shared/rules/verdict.ts";
import { requirementPlaces } from "../../shared/rules/requirement-places.ts";
import { type FindingGroup, groupFindings } from "../../shared/rules/wording/group-findings.ts";
import { placesOf, wordFinding } from "../../shared/rules/wording/word-finding.ts";
import { wordRequirement } from "../../shared/rules/wording/word-requirement.ts";
import { wordUndetermined } from "../../shared/rules/wording/word-undetermined.ts";
import type { Requirement, Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { stationNames } from "../attempt/station-names.ts";
import type { Change } from "../../shared/scenario/change.ts";
import { type Outlook, outlookOf } from "../attempt/try-mends.ts";
import { workStateOf } from "../attempt/work-state.ts";
import type { AttemptToShow } from "./to-show.ts";

type Bar = NonNullable<FindingView["bars"]>[number];

/** Facts of findings that are currents to compare, by the name of their bar. */
const barOfFact: Readonly<Record<string, Bar["name"]>> = {
  designA: "Ib",
  designCurrentA: "Ib",
  worstA: "Ib",
  deviceA: "In",
  deviceRatingA: "In",
  fuseA: "In",
  ratingA: "Iz",
  legA: "leg",
  legCurrentA: "leg",
  leastA: "least",
  leastRatingA: "least",
};

/** Of the findings of one cause the one whose cable may carry least, or the first. */
const worstOf = (group: FindingGroup): Finding =>
  group.reduce((worst, next) =>
    Number(next.facts["ratingA"]) < Number(worst.facts["ratingA"]) ? next : worst,
  );

/** The currents a finding compares; none where there are not two to compare. */
function barsOf({ facts }: Finding): { bars?: Bar[] } {
  const bars = Object.entries(barOfFact).flatMap(([fact, name]): Bar[] => {
    const currentA = facts[fact];
    return typeof currentA === "number" ? [{ name, currentA }] : [];
  });
  return bars.length > 1 ? { bars } : {};
}

/** So many places a line of what the task asks names, and counts the rest. */
const mostPlacesAsked = 3;

/** A verdict in the learner's language, as whole sentences. */
function inWords(
  verdict: Verdict,
  wiring: Pick<Wiring, "stations" | "supply">,
  run: AttemptRun,
  language: Language,
): Omit<VerdictView, "isCurrent" | "isHeld"> {
  const names = stationNames(run.kit.stripped, language);
  return {
    findings: groupFindings(verdict).map((group) => {
      const { weightWord: _weightWord, ...words } = wordFinding(group, wiring, language, names);
      const { where, what } = wordFinding(group, wiring, language, names, Infinity);
      const isShort = where !== words.where || what !== words.what;
      const [{ id, weight }] = group;
      return {
        id,
        weight,
        ...words,
        ...(isShort ? { inFull: { where, what } } : {}),
        places: placesOf(group),
        ...barsOf(worstOf(group)),
      };
    }),
    requirements: verdict.requirements.map(({ requirement, ...result }) => {
      const text = wordRequirement(requirement, wiring, language, names, mostPlacesAsked);
      const inFull = wordRequirement(requirement, wiring, language, names);
      return {
        text,
        ...(inFull === text ? {} : { inFull }),
        answer: isUntold(requirement, run) ? ("cannot-say" as const) : result.answer,
        places: requirementPlaces({ requirement, ...result }),
      };
    }),
    undetermined: verdict.undetermined.map((missing) => ({
      text: wordUndetermined(missing, wiring, language, names),
      place: missing.place,
      cause: missing.cause,
    })),
    proposal: verdict.proposal,
  };
}

/** Whether what was named of a hunt is right is said when it is handed in. */
const isUntold = ({ kind }: Requirement, { state }: AttemptRun): boolean =>
  kind === "fault-named" && state.status !== "handed-in";

/** What can be done about each note of a verdict: tried once, on the board that it was given for. */
const outlooks = new WeakMap<Verdict, Outlook[]>();

function outlooksOf(verdict: Verdict, run: AttemptRun, isOfNow: boolean): readonly Outlook[] {
  const known = outlooks.get(verdict);
  if (known || !isOfNow) return known ?? [];
  let least: readonly Change[] | undefined;
  const leastOnce = (): readonly Change[] => (least ??= run.leastChange() ?? []);
  const made = groupFindings(verdict).map((group) => outlookOf(run, group, verdict, leastOnce));
  outlooks.set(verdict, made);
  return made;
}

/** The words of a verdict, with what can be done about its notes while the work is open. */
function wordsWhileOpen(
  verdict: Verdict,
  run: AttemptRun,
  language: Language,
  isOfNow: boolean,
): ReturnType<typeof inWords> {
  const words = wordsFor(verdict, run, language);
  if (workStateOf(run.state) !== "wiring") return words;
  const all = outlooksOf(verdict, run, isOfNow);
  const findings = words.findings.map((finding, i): FindingView => {
    const { mend, followCount = 0 } = all[i] ?? {};
    return { ...finding, ...(mend ? { mend } : {}), ...(followCount > 0 ? { followCount } : {}) };
  });
  return { ...words, findings };
}

const nothingYet = { findings: [], requirements: [], undetermined: [], proposal: "cannot-say" } as const;

/** Sentences are made once for a verdict and a language, however often the view is published. */
const said = new WeakMap<Verdict, Map<Language, ReturnType<typeof inWords>>>();

function wordsFor(verdict: Verdict, run: AttemptRun, language: Language): ReturnType<typeof inWords> {
  const known = said.get(verdict) ?? new Map<Language, ReturnType<typeof inWords>>();
  said.set(verdict, known);
  const words = known.get(language) ?? inWords(verdict, run.judged().wiring, run, language);
  known.set(language, words);
  return words;
}

/**
 * The verdict a learner may see: the one last asked for, marked as past once the board has changed, or in live
 * practice the one of this moment. While a plug may be half in it is held back.
 */
export function verdictView(shown: AttemptToShow, language: Language): VerdictView | null {
  const { run, isSettled, isAsked, findings } = shown;
  const { asked, status } = run.state;
  const isHeld = isAsked || (findings === "live" && !isSettled);
  if (findings === "live" && status === "open" && run.state.entered.includes("wire")) {
    if (isHeld) return { ...copy(nothingYet), isCurrent: true, isHeld };
    return { ...wordsWhileOpen(run.judged().verdict, run, language, true), isCurrent: true, isHeld };
  }
  if (!asked) return isHeld ? { ...copy(nothingYet), isCurrent: true, isHeld } : null;
  const isCurrent = status === "handed-in" || run.judged().wiringHash === asked.wiringHash;
  return {
    ...wordsWhileOpen(asked.verdict, run, language, isCurrent && !isHeld),
    isCurrent,
    isHeld,
  };
}

const copy = (empty: typeof nothingYet): Omit<VerdictView, "isCurrent" | "isHeld"> => ({
  ...empty,
  findings: [],
  requirements: [],
  undetermined: [],
});
