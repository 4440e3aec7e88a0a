import type { Language } from "../../shared/text/languages.ts";

/** How signs and units that voices stumble over are said. */
const said: Record<Language, readonly [RegExp, string][]> = {
  en: [
    [/ ?mm²/gu, " square millimetres"],
    [/(?<=\d) ?mΩ\/m/gu, " milliohms a metre"],
    [/(?<=\d) ?ms(?!\p{L})/gu, " milliseconds"],
    [/>(?=\d)/gu, "more than "],
    [/(?<=\d) ?MΩ/gu, " megohms"],
    [/(?<=\d) ?Ω/gu, " ohms"],
    [/(?<=\d) A(?![\p{L}\d])/gu, " amps"],
    [/(?<=\d) W(?![\p{L}\d])/gu, " watts"],
    [/(?<=\d) V(?![\p{L}\d])/gu, " volts"],
    [/≥|>=/gu, "is at least"],
    [/≤|<=/gu, "is at most"],
    [/÷/gu, "divided by"],
    [/×/gu, "times"],
  ],
  pl: [
    [/ ?mm²/gu, " milimetra kwadratowego"],
    [/(?<=\d) ?mΩ\/m/gu, " milioma na metr"],
    [/(?<=\d) ?ms(?!\p{L})/gu, " milisekundy"],
    [/>(?=\d)/gu, "ponad "],
    [/(?<=\d) ?MΩ/gu, " megaoma"],
    [/(?<=\d) ?Ω/gu, " oma"],
    [/(?<=\d) A(?![\p{L}\d])/gu, " ampera"],
    [/(?<=\d) W(?![\p{L}\d])/gu, " wata"],
    [/(?<=\d) V(?![\p{L}\d])/gu, " wolta"],
    [/≥|>=/gu, "co najmniej"],
    [/≤|<=/gu, "co najwyżej"],
    [/÷/gu, "podzielić przez"],
    [/×/gu, "razy"],
  ],
};

/** Polish counts units in three forms: 1 amper, 3 ampery, 5 amperów; a part of one is "ampera". */
const polishUnits: readonly (readonly [string, string, string, string])[] = [
  ["milimetra kwadratowego", "milimetr kwadratowy", "milimetry kwadratowe", "milimetrów kwadratowych"],
  ["megaoma", "megaom", "megaomy", "megaomów"],
  ["oma", "om", "omy", "omów"],
  ["milioma na metr", "miliom na metr", "miliomy na metr", "miliomów na metr"],
  ["milisekundy", "milisekunda", "milisekundy", "milisekund"],
  ["ampera", "amper", "ampery", "amperów"],
  ["wata", "wat", "waty", "watów"],
  ["wolta", "wolt", "wolty", "woltów"],
];

const counted = (text: string): string =>
  polishUnits.reduce(
    (all, [part, one, few, many]) =>
      all.replace(new RegExp(`(?<![\\d,])(\\d+) ${part}(?!\\p{L})`, "gu"), (_, count: string) => {
        const isFew = /(?<!1)[234]$/.test(count);
        return `${count} ${count === "1" ? one : isFew ? few : many}`;
      }),
    text,
  );

/** A text as a voice of the language is to say it: signs and units in words. */
export const spokenText = (text: string, language: Language): string => {
  const inWords = said[language].reduce((all, [sign, words]) => all.replace(sign, words), text);
  return language === "pl" ? counted(inWords) : inWords;
};
