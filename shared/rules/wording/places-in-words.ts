import type { Finding } from "../verdict.ts";
import type { Grammar, Terms } from "./catalogue.ts";
import type { Namer } from "./name-place.ts";
import { speakList } from "./speak-fact.ts";

/** So many places are named in a sentence; the rest are counted. */
const mostPlacesNamed = 6;

/** Words for the gaps that every finding fills: `{place}`, `{places}`, `{cause}`, `{causes}` and `{more}`. */
export function placesInWords(
  finding: Pick<Finding, "causes" | "places">,
  terms: Terms,
  nameOf: Namer,
): (name: string, grammar: Grammar) => string | undefined {
  const { causes } = finding;
  const places = finding.places.length > 0 ? finding.places : causes;
  const named = (of: Finding["places"], grammar: Grammar): string[] => [
    // What is not on this board any more, such as a station a cable still names, is called by its id.
    ...new Set(of.map(({ id }) => nameOf(id)?.[grammar] ?? id)),
  ];
  return (name, grammar) => {
    switch (name) {
      case "place":
        return named(places, grammar)[0];
      case "cause":
        return named(causes, grammar)[0];
      case "places":
        return speakList(named(places, grammar).slice(0, mostPlacesNamed), terms.and);
      case "causes":
        return speakList(named(causes, grammar).slice(0, mostPlacesNamed), terms.and);
      case "more": {
        const moreCount = named(places, grammar).length - mostPlacesNamed;
        return moreCount > 0 ? String(moreCount) : undefined;
      }
      default:
        return undefined;
    }
  };
}
