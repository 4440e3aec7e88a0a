import type { Language } from "../../shared/text/languages.ts";
import { type TradeWord, tradeWords } from "./trade-words.ts";

/** A piece of a text; with `word` it is a word of the trade that the screen explains. */
export interface TextPart {
  text: string;
  word?: TradeWord;
}

// How a word of the trade stands in a sentence: its cases and plurals, and not the everyday word that is spelt the same
// ("in", "it", "the other way").
const symbol = (name: string): string => `\\(${name}\\)|${name}(?= [<>≤≥=])|(?<=[<>≤≥=] )${name}\\b`;
const symbols = {
  Ib: symbol("Ib"),
  In: symbol("In"),
  Iz: symbol("Iz"),
  It: symbol("It"),
} as const;

const forms: Record<Language, Record<TradeWord, string>> = {
  en: {
    ...symbols,
    ring: "rings?",
    radial: "radials?",
    spur: "spurs?",
    leg: "legs?",
    point: "points?",
    way: "ways?(?= \\d)|(?<=(?:at|from|to|leaves?) (?:the|its|that|same) )way",
    device: "devices?",
    fcu: "fused connection units?(?: \\(FCU\\))?|FCUs?",
    "junction-box": "junction box(?:es)?",
    isolate: "isolat(?:e|ed|ion)",
    line: "line",
    neutral: "neutral",
    earth: "earth",
    rcd: "RCDs?",
    "consumer-unit": "consumer units?",
    rose: "(?:ceiling )?roses?",
    "switched-line": "switched line",
    strapper: "strappers?",
    "two-way": "two-way switch(?:es)?",
    intermediate: "intermediate switch(?:es)?",
    polarity: "polarity",
    Zs: "Zs",
  },
  pl: {
    ...symbols,
    ring: "pierście(?:ń|ni\\p{L}*)",
    radial: "obw[oó]d\\p{L}* promieniow\\p{L}*",
    spur: "odgałęzie[nń]\\p{L}*",
    leg: "rami(?:ę|eni\\p{L}*|on\\p{L}*)",
    point: "punkt(?:u|owi|em|cie|y|ów|om|ami|ach)?",
    way: "pol(?:e|a|u|em|ach|ami)(?= \\d)|(?<=(?:w|z|do|samego) )pol(?:u|a)",
    device: "wyłącznik(?!\\p{L}* różnic)\\p{L}*",
    fcu: "złącz\\p{L}* (?:z bezpiecznikiem(?: \\(FCU\\))?|FCU)|FCU",
    "junction-box": "pusz(?:k\\p{L}*|ce|ek)",
    isolate: "odłącz\\p{L}*",
    line: "faz(?:a|y|ę|ie|ą)(?! załączan)|przew[oó]d\\p{L}* (?:fazow|liniow)\\p{L}*",
    neutral: "(?:przew[oó]d\\p{L}* )?neutraln\\p{L}*",
    earth: "(?:przew[oó]d\\p{L}* )?ochronn(?:y|ego|ym|emu)",
    rcd: "RCD|wyłącznik\\p{L}* różnicowoprądow\\p{L}*",
    "consumer-unit": "rozdzielnic\\p{L}*",
    rose: "rozet\\p{L}*|rozecie",
    "switched-line": "faz\\p{L}* załączan\\p{L}*",
    strapper: "(?:żył\\p{L}* )?korespondencyjn\\p{L}*",
    "two-way": "łącznik\\p{L}* schodow\\p{L}*",
    intermediate: "łącznik\\p{L}* krzyżow\\p{L}*",
    polarity: "biegunowoś\\p{L}*",
    Zs: "Zs",
  },
};

const pattern = (language: Language): RegExp =>
  new RegExp(
    tradeWords.map((word) => `(?<${groupOf(word)}>${bounded(forms[language][word])})`).join("|"),
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
