import type { Language } from "../../shared/text/languages.ts";
import { tradeWordForms } from "./trade-word-forms.ts";
import { type TradeWord, tradeWords } from "./trade-words.ts";

/** A piece of a text; with `word` it is a word of the trade that the screen explains. */
export interface TextPart {
  text: string;
  word?: TradeWord;
}

/** A word stands for itself, not within another one; asked once a place, for a text has many and few begin a word. */
function pattern(language: Language): RegExp {
  const words = tradeWords.map(
    (word) => `(?<${groupOf(word)}>${smallOrCapital(tradeWordForms[language][word])})`,
  );
  return new RegExp(`(?<![\\p{L}\\d])(?:${words.join("|")})(?![\\p{L}\\d])`, "gu");
}

const smallOrCapital = (form: string): string =>
  form.replace(
    /(^|\|)(\(\?:)?(\p{Ll})/gu,
    (_, bar: string, open: string | undefined, letter: string) =>
      `${bar}${open ?? ""}[${letter}${letter.toUpperCase()}]`,
  );

function groupOf(word: TradeWord): string {
  return word.replaceAll("-", "_");
}

const patterns: Partial<Record<Language, RegExp>> = {};

/** Cuts a text at its words of the trade. Put together again the parts are the text. */
export const markWords = (text: string, language: Language): TextPart[] => {
  const parts: TextPart[] = [];
  let last = 0;
  for (const match of text.matchAll((patterns[language] ??= pattern(language)))) {
    const word = tradeWords.find((each) => match.groups?.[groupOf(each)] !== undefined);
    if (!word) continue;
    if (match.index > last) parts.push({ text: text.slice(last, match.index) });
    parts.push({ text: match[0], word });
    last = match.index + match[0].length;
  }
  if (last < text.length) parts.push({ text: text.slice(last) });
  return parts;
};
