import type { PublicSheet, PublicSheetName } from "../../shared/protocol/public-text.ts";
import { publicSheetNames } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Text } from "../../shared/text/text.schema.ts";

const titles: Record<PublicSheetName, Text> = {
  cautions: { en: "Cautions", pl: "Ostrzeżenia" },
  "data-protection": { en: "What we keep about you", pl: "Co o Tobie przechowujemy" },
  accessibility: { en: "Accessibility", pl: "Dostępność" },
  notices: { en: "Made by others", pl: "Praca innych" },
};

/** What a sheet is called, and all of them. */
export const sheetTitles = (
  name: PublicSheetName,
  language: Language,
): Pick<PublicSheet, "name" | "title" | "all"> => ({
  name,
  title: titles[name][language],
  all: publicSheetNames.map((one) => ({ name: one, title: titles[one][language] })),
});
