import { isFromMemory } from "../../trade/is-from-memory.ts";
import type { Source } from "../../trade/source.ts";
import type { Terms } from "./catalogue.ts";
import { fillTemplate } from "./fill-template.ts";

/** What a rule rests on, in a sentence that tells regulation, guidance and common practice apart. */
export function wordReference(source: Source, terms: Terms): string {
  const { references } = terms;
  if (source.kind === "common practice, no source") return references.practice;
  if (source.kind === "from memory") return fillTemplate(references.memory, () => source.about);
  const { document, kind } = source;
  // Sources are written in English: what joins their clauses is said in the language of the sentence.
  const clause = source.clause.replaceAll(" and ", ` ${terms.and} `);
  const sentence = fillTemplate(references[kind], (name) => (name === "document" ? document : clause));
  return isFromMemory(source) ? `${sentence} ${references.unchecked}` : sentence;
}
