import type { Language } from "../../shared/text/languages.ts";
import { tradeWordForms } from "./trade-word-forms.ts";
import { type TradeWord, tradeWords } from "./trade-words.ts";

/** A piece of a text; with `word` it is a word of the trade that the screen explains. */
export interface TextPart {
  text: string;
  word?: TradeWord;
}

const pattern = (language: Language): RegExp =>
  new RegExp(
    tradeWords.map((word) => `(?<${groupOf(word)}>${bounded(tradeWordForms[language][word])})`).join("|"),
    "gu",
  );

/** A form stands for itself, small or with a capital, not within another word. */
function bounded(form: string): string {
  const capital = form.replace(
    /(^|\|)(\(\?:)?(\p{Ll})/gu,
    (_, bar: string, open: string | undefined, letter: string) =>
      `${bar}${open ?? ""}[${letter}${letter.toUpperCase()}]`,
  );
  return `(?<![\\p{L}\\d])(?:${capital})(?![\\p{L}\\d])`;
}

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
