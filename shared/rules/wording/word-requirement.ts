import type { Language } from "../../text/languages.ts";
import type { Requirement, Wiring } from "../../wiring/wiring.schema.ts";
import type { FactValue } from "../rule.ts";
import type { Terms } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";
import { wordings } from "./languages.ts";
import { namerOf, type StationNames } from "./name-place.ts";
import { speakFact, speakList, speakNumber } from "./speak-fact.ts";

/** What a task asks for, in one sentence. A fault that is to be named is counted, never told. */
export function wordRequirement(
  requirement: Requirement,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
): string {
  const { terms } = wordings[language];
  const nameOf = namerOf(wiring, terms, names);
  const { template, facts } = sentenceOf(requirement, terms);
  return fillTemplate(template, (name, grammar) => {
    const fact = facts[name];
    return fact === undefined ? undefined : speakFact(name, fact, grammar, terms, nameOf);
  });
}

function sentenceOf(
  requirement: Requirement,
  terms: Terms,
): { template: string; facts: Partial<Record<string, FactValue>> } {
  const { requirements } = terms;
  const template =
    requirement.kind === "shape" ? requirements[requirement.shape] : requirements[requirement.kind];
  switch (requirement.kind) {
    case "served":
      return { template, facts: { stations: requirement.stations } };
    case "one-circuit": {
      const { stations, way } = requirement;
      return { template, facts: { stations, ...(way ? { way } : {}) } };
    }
    case "shape":
      return { template, facts: { of: requirement.of } };
    case "kept":
      return { template, facts: { cables: requirement.cables } };
    case "device": {
      const ratings = requirement.ratingA.map((ratingA) => speakNumber("ratingA", ratingA, terms));
      return { template, facts: { way: requirement.way, ratings: speakList(ratings, terms.or) } };
    }
    case "readings":
      return {
        template,
        facts: { way: requirement.way, tests: requirement.tests.map((test) => terms.tests[test]) },
      };
    case "fault-named":
      return { template, facts: { faultCount: requirement.faults.length } };
  }
}
