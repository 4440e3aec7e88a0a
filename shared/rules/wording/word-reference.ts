import type { Source } from "../../trade/source.ts";
import type { Terms } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";

/**
 * What a rule rests on, in a sentence that tells regulation, guidance and common practice apart. How far it was
 * checked is for the trainer, who has the list of `values`, and no part of it.
 */
export function wordReference(source: Source, terms: Terms): string {
  const { references } = terms;
  if (!("document" in source)) return references.practice;
  const { document, kind } = source;
  // Sources are written in English: what their clauses say beside numbers is told in the language of the sentence.
  const clause = terms.clauseWords.reduce((text, [word, said]) => text.replaceAll(word, said), source.clause);
  return fillTemplate(references[kind], (name) => (name === "document" ? document : clause));
}
