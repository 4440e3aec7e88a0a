import { languages, type Language } from "../../shared/text/languages.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import { wordFinding } from "../../shared/rules/wording/word-finding.ts";
import { wordRequirement } from "../../shared/rules/wording/word-requirement.ts";
import type { Change } from "../../shared/scenario/change.ts";
import { wordChange } from "../../shared/scenario/word-change.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import type { Judged } from "./picture-of.ts";
import { hintLimit } from "../../shared/scenario/hint-limit.ts";
import { hintWords, moreToDo } from "./hint-words.ts";
import { stationNames } from "./station-names.ts";

const inEach = (say: (language: Language) => string): Text => {
  const [en, pl] = languages.map(say);
  return { en: en ?? "", pl: pl ?? "" };
};

/** So many changes a hint names. */
const mostNamed = 2;

/** Findings that say no more than that the task is not done yet. */
const unfinished: ReadonlySet<string> = new Set(["not-served", "outside-task"]);

/**
 * The text of hint 1, 2 or 3 for the board as it is now. Where something is wrong, it is about that: a nudge, then
 * what it is about, then the place and what to do. Where nothing is, it is the scenario's own, or else one about the
 * first thing that the task still asks for.
 *
 * @param leastChange what of it is done puts all right; undefined where that cannot be told
 */
export function hintText(
  scenario: Scenario,
  { wiring, verdict }: Judged,
  number: number,
  leastChange: () => readonly Change[] | undefined,
): Text {
  const wrong = verdict.findings.find(({ weight, rule }) => isToMend(weight) && !unfinished.has(rule));
  if (wrong) {
    const changes = number === hintLimit ? leastChange() : undefined;
    return changes ? toDo(scenario, wiring, changes) : hintAbout(scenario, wiring, wrong, number);
  }
  const own = scenario.hints?.[number - 1];
  const open = verdict.requirements.find(({ answer }) => answer !== "met");
  if (own && open) return own;
  const [query] = verdict.findings.filter(({ weight }) => weight === "query");
  if (query) return hintAbout(scenario, wiring, query, number);
  if (open) {
    if (number === 1) return hintWords.asksMore;
    return inEach((language) =>
      wordRequirement(open.requirement, wiring, language, stationNames(scenario, language)),
    );
  }
  return verdict.undetermined.length > 0 ? hintWords.valueMissing : hintWords.nothingLeft;
}

/** What to do, one thing after the other; of a long list the first things, and how many more there are. */
function toDo(scenario: Scenario, wiring: Judged["wiring"], changes: readonly Change[]): Text {
  const moreCount = changes.length > mostNamed + 1 ? changes.length - mostNamed : 0;
  const named = moreCount > 0 ? changes.slice(0, mostNamed) : changes;
  return inEach((language) => {
    const names = stationNames(scenario, language);
    const all = named.map((change) => wordChange(change, wiring, language, names));
    return [...all, ...(moreCount > 0 ? [moreToDo[language](moreCount)] : [])].join(" ");
  });
}

function hintAbout(
  scenario: Scenario,
  wiring: Judged["wiring"],
  finding: Judged["verdict"]["findings"][number],
  number: number,
): Text {
  if (number === 1) return hintWords.lookAgain;
  return inEach((language) => {
    const { title, where, remedy } = wordFinding(finding, wiring, language, stationNames(scenario, language));
    return number === 2 ? `${title}.` : `${title}. ${where} ${remedy}`;
  });
}
