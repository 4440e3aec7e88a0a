import { allValues } from "../trade/all-values.ts";
import { rules } from "./index.ts";
import { packVersion } from "./pack-version.ts";
import { rankOf } from "./rank-of.ts";
import { en } from "./wording/en.ts";

/**
 * The rule pack as a document for the log: every rule in the order of causes with its weights, sources and English
 * sentences, and every value of the trade tables with its source. JSON, the same text for the same pack.
 */
export function rulePackText(): string {
  const inOrder = [...rules].sort((a, b) => rankOf(a.id) - rankOf(b.id));
  return JSON.stringify({
    packVersion,
    rules: inOrder.map(({ id, variants, source, variantSources = {} }) => ({
      id,
      variants,
      source,
      variantSources,
      sentences: en[id],
    })),
    values: allValues,
  });
}
