import { languages, type Language } from "../../shared/text/languages.ts";
import { wordFinding } from "../../shared/rules/wording/word-finding.ts";
import { wordRequirement } from "../../shared/rules/wording/word-requirement.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import type { Judged } from "./attempt-run.ts";
import { hintWords } from "./hint-words.ts";
import { stationNames } from "./station-names.ts";

const inEach = (say: (language: Language) => string): Text => {
  const [en, pl] = languages.map(say);
  return { en: en ?? "", pl: pl ?? "" };
};

/**
 * The text of hint 1, 2 or 3: the scenario's own, or one made from the board as it is now: a nudge, then the
 * rule it is about, then the place. Where nothing is wrong it is about the first thing the task still asks for.
 */
export function hintText(scenario: Scenario, { wiring, verdict }: Judged, number: number): Text {
  const own = scenario.hints?.[number - 1];
  if (own) return own;
  const [finding] = verdict.findings.filter(({ weight }) => weight !== "note");
  if (finding) {
    if (number === 1) return hintWords.lookAgain;
    return inEach((language) => {
      const { title, where } = wordFinding(finding, wiring, language, stationNames(scenario, language));
      return number === 2 ? `${title}.` : `${title}. ${where}`;
    });
  }
  const open = verdict.requirements.find(({ answer }) => answer !== "met");
  if (open) {
    if (number === 1) return hintWords.asksMore;
    return inEach((language) =>
      wordRequirement(open.requirement, wiring, language, stationNames(scenario, language)),
    );
  }
  return verdict.undetermined.length > 0 ? hintWords.valueMissing : hintWords.nothingLeft;
}
