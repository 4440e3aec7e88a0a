import type { Finding } from "../verdict.ts";
import type { Grammar, Terms } from "./catalogue.ts";
import type { Namer } from "./name-place.ts";
import { shortened, speakList } from "./speak-fact.ts";

/**
 * Words for the gaps that every finding fills: `{place}`, `{places}`, `{cause}` and `{causes}`. So many places are
 * named in a sentence at most, and the rest counted.
 */
export function placesInWords(
  finding: Pick<Finding, "causes" | "places">,
  terms: Terms,
  nameOf: Namer,
  mostNamed: number,
): (name: string, grammar: Grammar) => string | undefined {
  const { causes } = finding;
  const places = finding.places.length > 0 ? finding.places : causes;
  const named = (of: Finding["places"], grammar: Grammar): string[] => [
    // What is not on this board any more, such as a station a cable still names, is called by its id.
    ...new Set(of.map(({ id }) => nameOf(id)?.[grammar] ?? id)),
  ];
  const listed = (of: Finding["places"], grammar: Grammar): string => {
    const said = shortened(named(of, grammar), mostNamed, terms.more);
    // The name of a cable has an "and" or a "to" of its own: those are told apart by a stronger mark.
    return of.every(({ kind }) => kind === "station") ? speakList(said, terms.and) : said.join("; ");
  };
  return (name, grammar) => {
    switch (name) {
      case "place":
        return named(places, grammar)[0];
      case "cause":
        return named(causes, grammar)[0];
      case "places":
        return listed(places, grammar);
      case "causes":
        return listed(causes, grammar);
      default:
        return undefined;
    }
  };
}
