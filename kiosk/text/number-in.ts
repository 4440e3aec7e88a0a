import type { Language } from "../../shared/text/languages.ts";

// A formatter is dear to make, and every pill on the plan asks for one.
const formats = new Map<Language, Intl.NumberFormat>();

/** Numbers as the language writes them, three decimals at most. */
export const numberIn = (language: Language, number: number): string => {
  let format = formats.get(language);
  if (!format) {
    format = new Intl.NumberFormat(language, { maximumFractionDigits: 3, useGrouping: false });
    formats.set(language, format);
  }
  return format.format(number);
};
