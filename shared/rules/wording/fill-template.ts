import type { Grammar } from "./catalogue.ts";

const gap = /\{([a-zA-Z0-9]+)(?::(nom|gen|acc|inst|loc))?\}/g;
const part = /\[([^\]]*)\]/g;

/** A sentence with a gap that nobody can fill: a mistake in the catalogue or in a rule. */
export class WordingGapError extends Error {
  readonly code = "wording-gap";
  readonly gapName: string;
  readonly template: string;

  constructor(gapName: string, template: string) {
    super(`nothing fills {${gapName}} in: ${template}`);
    this.gapName = gapName;
    this.template = template;
  }
}

/** The names of the gaps in a template; with `isOptional` where only a part in brackets has them. */
export function gapsOf(template: string): { name: string; isOptional: boolean }[] {
  const must = new Set([...template.replace(part, "").matchAll(gap)].map(([, name = ""]) => name));
  const all = new Set([...template.matchAll(gap)].map(([, name = ""]) => name));
  return [...all].map((name) => ({ name, isOptional: !must.has(name) }));
}

/**
 * A template with its gaps filled and its sentences begun with a capital. `say` gives the words for a gap, undefined
 * where there are none: a part in brackets with such a gap is left out, elsewhere it throws `WordingGapError`.
 */
export function fillTemplate(
  template: string,
  say: (name: string, grammar: Grammar) => string | undefined,
): string {
  const fill = (text: string) =>
    text.replace(gap, (_whole, name: string, grammar: Grammar | undefined) => {
      const words = say(name, grammar ?? "nom");
      if (words === undefined) throw new WordingGapError(name, template);
      return words;
    });
  const isFilled = (text: string) =>
    [...text.matchAll(gap)].every(
      ([, name = "", grammar]) => say(name, (grammar ?? "nom") as Grammar) !== undefined,
    );
  const whole = template.replace(part, (_whole, text: string) => (isFilled(text) ? text : ""));
  return withCapitals(fill(whole).trim());
}

/** Sentences begun with a capital, whatever name stands first in them. */
function withCapitals(text: string): string {
  return text.replace(
    /(^|[.!?] )(\p{Ll})/gu,
    (_whole, before: string, letter: string) => before + letter.toUpperCase(),
  );
}
