import type { Language } from "../../text/languages.ts";
import type { Catalogue, Terms } from "./catalogue.ts";
import { en } from "./en.ts";
import { enTerms } from "./en-terms.ts";
import { pl } from "./pl.ts";
import { plTerms } from "./pl-terms.ts";

/** Sentences and words of each language the bench speaks. */
export const wordings: Readonly<Record<Language, { catalogue: Catalogue; terms: Terms }>> = {
  en: { catalogue: en, terms: enTerms },
  pl: { catalogue: pl, terms: plTerms },
};
