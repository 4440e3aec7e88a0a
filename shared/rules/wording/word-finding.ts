import type { Language } from "../../text/languages.ts";
import type { Wiring } from "../../wiring/wiring.schema.ts";
import { rules } from "../index.ts";
import type { FactValue, Place } from "../rule.ts";
import type { Finding } from "../verdict.ts";
import type { Grammar, Terms, VariantWords } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";
import type { FindingGroup } from "./group-findings.ts";
import { wordings } from "./languages.ts";
import { type Namer, namerOf, type StationNames } from "./name-place.ts";
import { placesInWords } from "./places-in-words.ts";
import { placesToLookAt } from "./places-to-look-at.ts";
import { speakFact, speakList } from "./speak-fact.ts";
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

/** So many places a note names in a sentence, and counts the rest: more of them would fill it. */
const mostPlacesNamed = 3;

/**
 * A finding, or several of one cause, in words. Stations are called by kind and printed label, with the scenario's
 * name where `names` has one. Throws a RangeError for a rule or variant without wording and `WordingGapError` for a
 * fact a sentence needs and the rule does not give; the tests hold the catalogue to the rules so that neither happens.
 * `mostNamed` of a list of places are named and the rest counted.
 */
export function wordFinding(
  finding: Finding | FindingGroup,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
  mostNamed = mostPlacesNamed,
): FindingWords {
  const group: FindingGroup = Array.isArray(finding) ? finding : [finding];
  const [first] = group;
  const { catalogue, terms } = wordings[language];
  const rule = rules.find(({ id }) => id === first.rule);
  const ruleWords = catalogue[first.rule];
  const words = variantOf(ruleWords.variants, first.variant);
  if (!rule || !words) throw new RangeError(`no wording for ${first.rule}, ${first.variant}`);
  const nameOf = namerOf(wiring, terms, names);
  const causes = distinct(group.flatMap((one) => one.causes));
  const places = placesOf(group);
  const inWords = placesInWords({ causes, places }, terms, nameOf, mostNamed);
  const lookAt = placesInWords({ causes, places: placesToLookAt(places) }, terms, nameOf, mostNamed);
  const say = (name: string, grammar: Grammar): string | undefined => {
    const facts = group.flatMap(({ facts }) => (Object.hasOwn(facts, name) ? [facts[name]] : []));
    return spoken(name, facts, grammar, terms, nameOf) ?? inWords(name, grammar);
  };
  const said = group.length > 1 ? { ...words, ...words.several } : words;
  return {
    title: fillTemplate(said.title ?? ruleWords.title, say),
    where: fillTemplate(terms.where, lookAt),
    what: fillTemplate(said.what, say),
    why: fillTemplate(said.why, say),
    remedy: fillTemplate(said.remedy, say),
    reference:
      words.reference ??
      ruleWords.reference ??
      wordReference(rule.variantSources?.[first.variant] ?? rule.source, terms),
    weightWord: terms.weights[first.weight],
  };
}

/** Where the findings of one cause show, each place once; the causes where nothing else is said. */
export const placesOf = (group: FindingGroup): Place[] =>
  distinct(group.flatMap(({ places, causes }) => (places.length > 0 ? places : causes)));

/** A fact of all findings of a group: as it is where they agree, else as a range of numbers or a list. */
function spoken(
  name: string,
  facts: readonly (FactValue | undefined)[],
  grammar: Grammar,
  terms: Terms,
  nameOf: Namer,
): string | undefined {
  const stated = facts.filter((fact) => fact !== undefined);
  const speak = (fact: FactValue) => speakFact(name, fact, grammar, terms, nameOf);
  const numbers = stated.filter((fact) => typeof fact === "number").sort((a, b) => a - b);
  const [least, most] = [numbers[0], numbers.at(-1)];
  if (
    numbers.length === stated.length &&
    least !== undefined &&
    most !== undefined &&
    speak(least) !== speak(most)
  )
    return terms.range(speak(least), speak(most));
  const said = [...new Set(stated.map(speak))];
  return said.length > 0 ? speakList(said, terms.and) : undefined;
}

const distinct = (places: readonly Place[]): Place[] => [
  ...new Map(places.map((place) => [`${place.kind} ${place.id}`, place])).values(),
];

function variantOf(
  variants: Readonly<Record<string, VariantWords>>,
  variant: string,
): VariantWords | undefined {
  return Object.hasOwn(variants, variant) ? variants[variant] : undefined;
}
