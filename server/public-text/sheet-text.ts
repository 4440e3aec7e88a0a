import type { Text } from "../../shared/text/text.schema.ts";
import type { PublicSheet, PublicSheetName } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import { sheetTitles } from "./sheet-titles.ts";

/** What a sheet is told of the bench it stands on. */
export interface SheetFacts {
  /** How many years a centre keeps a learner who no longer comes. */
  keepYears: number;
}

/** A sheet in every language. */
export interface SheetText {
  name: PublicSheetName;
  parts: { heading: Text; lines: Text[] }[];
}

const yearWords: Record<Language, Partial<Record<Intl.LDMLPluralRule, string>>> = {
  en: { one: "year", other: "years" },
  pl: { one: "rok", few: "lata", many: "lat", other: "roku" },
};

/** So many years, as they stand after "keeps for". */
const yearsIn = (count: number, language: Language): string =>
  `${count} ${yearWords[language][new Intl.PluralRules(language).select(count)] ?? ""}`;

/** A sheet in one language, its gaps filled. */
export const sheetIn = (
  { name, parts }: SheetText,
  language: Language,
  { keepYears }: SheetFacts,
): PublicSheet => ({
  ...sheetTitles(name, language),
  parts: parts.map(({ heading, lines }) => ({
    heading: heading[language],
    lines: lines.map((line) => line[language].replaceAll("{keepYears}", yearsIn(keepYears, language))),
  })),
});
