import type { Language } from "../../text/languages.ts";
import type { Wiring } from "../../wiring/wiring.schema.ts";
import { rules } from "../index.ts";
import type { Finding } from "../verdict.ts";
import type { Grammar, VariantWords } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";
import { wordings } from "./languages.ts";
import { namerOf, type StationNames } from "./name-place.ts";
import { placesInWords } from "./places-in-words.ts";
import { placesToLookAt } from "./places-to-look-at.ts";
import { speakFact } from "./speak-fact.ts";
import { wordReference } from "./word-reference.ts";

/** A finding as a learner reads it: whole sentences. */
export interface FindingWords {
  title: string;
  where: string;
  what: string;
  why: string;
  remedy: string;
  reference: string;
  weightWord: string;
}

/**
 * A finding in words. Stations are called by kind and printed label, with the scenario's name where `names` has one.
 * Throws a RangeError for a rule or variant without wording and `WordingGapError` for a fact a sentence needs and the
 * rule does not give; the tests hold the catalogue to the rules so that neither happens.
 */
export function wordFinding(
  finding: Finding,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
): FindingWords {
  const { catalogue, terms } = wordings[language];
  const rule = rules.find(({ id }) => id === finding.rule);
  const ruleWords = catalogue[finding.rule];
  const words = variantOf(ruleWords.variants, finding.variant);
  if (!rule || !words) throw new RangeError(`no wording for ${finding.rule}, ${finding.variant}`);
  const nameOf = namerOf(wiring, terms, names);
  const inWords = placesInWords(finding, terms, nameOf);
  const lookAt = placesInWords({ ...finding, places: placesToLookAt(finding.places) }, terms, nameOf);
  const say = (name: string, grammar: Grammar): string | undefined => {
    const fact = Object.hasOwn(finding.facts, name) ? finding.facts[name] : undefined;
    return fact === undefined ? inWords(name, grammar) : speakFact(name, fact, grammar, terms, nameOf);
  };
  return {
    title: fillTemplate(words.title ?? ruleWords.title, say),
    where: fillTemplate(terms.where, lookAt),
    what: fillTemplate(words.what, say),
    why: fillTemplate(words.why, say),
    remedy: fillTemplate(words.remedy, say),
    reference:
      ruleWords.reference ?? wordReference(rule.variantSources?.[finding.variant] ?? rule.source, terms),
    weightWord: terms.weights[finding.weight],
  };
}

function variantOf(
  variants: Readonly<Record<string, VariantWords>>,
  variant: string,
): VariantWords | undefined {
  return Object.hasOwn(variants, variant) ? variants[variant] : undefined;
}
