import type { Language } from "../../text/languages.ts";
import type { Requirement, Wiring } from "../../wiring/wiring.schema.ts";
import type { FactValue } from "../rule.ts";
import type { Terms } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";
import { wordings } from "./languages.ts";
import { namerOf, type StationNames } from "./name-place.ts";
import { speakFact, speakList, speakNumber } from "./speak-fact.ts";

/**
 * What a task asks for, in one sentence. A fault that is to be named is counted, never told. `mostNamed` of a list are
 * named and the rest counted.
 */
export function wordRequirement(
  requirement: Requirement,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
  mostNamed = Infinity,
): string {
  const { terms } = wordings[language];
  const nameOf = namerOf(wiring, terms, names);
  const { template, facts } = sentenceOf(requirement, terms);
  return fillTemplate(template, (name, grammar) => {
    const fact = facts[name];
    return fact === undefined ? undefined : speakFact(name, fact, grammar, terms, nameOf, mostNamed);
  });
}

function sentenceOf(
  requirement: Requirement,
  terms: Terms,
): { template: string; facts: Partial<Record<string, FactValue>> } {
  const { requirements } = terms;
  const template = requirements[templateName(requirement)];
  switch (requirement.kind) {
    case "served":
    case "in-ring":
    case "unfused-spur":
      return { template, facts: { stations: requirement.stations } };
    case "through-fcu": {
      const { stations, fcu } = requirement;
      return { template, facts: { stations, ...(fcu ? { fcu } : {}) } };
    }
    case "own-switch": {
      const { stations, by } = requirement;
      return { template, facts: { stations, ...(by ? { by } : {}) } };
    }
    case "fuse":
      return { template, facts: { stations: requirement.stations, mostA: requirement.mostA } };
    case "sized":
      return { template, facts: { way: requirement.way } };
    case "thrift":
      return { template, facts: {} };
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

function templateName(requirement: Requirement): keyof Terms["requirements"] {
  switch (requirement.kind) {
    case "shape":
      return requirement.shape;
    case "through-fcu":
      return requirement.fcu ? "through-one-fcu" : "through-any-fcu";
    case "thrift":
      return requirement.spareSizes === 0 ? "thrift" : "thrift-but-one";
    default:
      return requirement.kind;
  }
}
