import { isFuseStandard, tabulatedRatingsA } from "../../trade/tabulated-ratings.ts";
import type { Language } from "../../text/languages.ts";
import type { Wiring } from "../../wiring/wiring.schema.ts";
import type { Undetermined } from "../verdict.ts";
import type { Terms } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";
import { wordings } from "./languages.ts";
import { namerOf, type StationNames } from "./name-place.ts";
import { speakList, speakNumber } from "./speak-fact.ts";

type Described = Pick<Wiring, "stations" | "supply">;

/**
 * What cannot be said yet, which value is missing and where; or which contact the board cannot read. Where no table has
 * the value, so that nobody can state it, what can be chosen in its place.
 */
export function wordUndetermined(
  undetermined: Undetermined,
  wiring: Described,
  language: Language,
  names?: StationNames,
): string {
  const { catalogue, terms } = wordings[language];
  const { rule, place, field } = undetermined;
  const name = namerOf(wiring, terms, names)(place.id);
  const fieldWord = Object.hasOwn(terms.fields, field) ? terms.fields[field] : undefined;
  return fillTemplate(terms.undetermined[kindOf(undetermined, wiring)], (gap, grammar) => {
    if (gap === "title") return catalogue[rule].title;
    if (gap === "place") return name?.[grammar] ?? place.id;
    if (gap === "ratings") return ratingsThatHaveOne(place.id, wiring, terms);
    return fieldWord ?? terms.undetermined.otherField;
  });
}

function kindOf({ cause, field }: Undetermined, { supply }: Described): keyof Terms["undetermined"] {
  if (field !== "maximumZsOhm") return cause;
  return supply?.earthing === "TT" ? "noLimitTt" : "noLimit";
}

function ratingsThatHaveOne(way: string, { stations }: Described, terms: Terms): string {
  const { deviceStandard, deviceRatingA = 0 } = stations.find(({ id }) => id === way)?.settings ?? {};
  if (!isFuseStandard(deviceStandard)) return terms.undetermined.otherField;
  const ratings = tabulatedRatingsA(deviceStandard, deviceRatingA).map((ratingA) =>
    speakNumber("ratingA", ratingA, terms),
  );
  return speakList(ratings, terms.or);
}
