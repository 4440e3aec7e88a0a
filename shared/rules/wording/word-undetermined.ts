import type { Language } from "../../text/languages.ts";
import type { Wiring } from "../../wiring/wiring.schema.ts";
import type { Undetermined } from "../verdict.ts";
import { fillTemplate } from "./fill-template.ts";
import { wordings } from "./languages.ts";
import { namerOf, type StationNames } from "./name-place.ts";

/** What cannot be said yet, which value is missing and where; or which contact the board cannot read. */
export function wordUndetermined(
  undetermined: Undetermined,
  wiring: Pick<Wiring, "stations">,
  language: Language,
  names?: StationNames,
): string {
  const { catalogue, terms } = wordings[language];
  const { rule, place, field, cause } = undetermined;
  const name = namerOf(wiring, terms, names)(place.id);
  const fieldWord = Object.hasOwn(terms.fields, field) ? terms.fields[field] : undefined;
  return fillTemplate(terms.undetermined[cause], (gap, grammar) => {
    if (gap === "title") return catalogue[rule].title;
    if (gap === "place") return name?.[grammar] ?? place.id;
    return fieldWord ?? terms.undetermined.otherField;
  });
}
