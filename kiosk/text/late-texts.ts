import type { Language } from "../../shared/text/languages.ts";

/** Texts that only a late screen needs, in every language at once: they are loaded with that screen. */
export type LateTexts<LateKey extends string> = Record<Language, Readonly<Record<LateKey, string>>>;

const taken: Record<Language, Record<string, string>> = { en: {}, pl: {} };

/** Adds the texts of a screen that was opened to those that were brought before. */
export const takeLateTexts = (texts: LateTexts<string>): void => {
  Object.assign(taken.en, texts.en);
  Object.assign(taken.pl, texts.pl);
};

/** A text that a late screen brought; undefined where none did. */
export const lateText = (language: Language, key: string): string | undefined => taken[language][key];
