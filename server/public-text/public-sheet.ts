import type { PublicSheet, PublicSheetName } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import { accessibility } from "./accessibility.ts";
import { cautions } from "./cautions.ts";
import { dataProtection } from "./data-protection.ts";
import { noticesSheet } from "./notices.ts";
import { type SheetFacts, sheetIn } from "./sheet-text.ts";

/** A sheet that anybody may read, in a language. */
export const publicSheet = (name: PublicSheetName, language: Language, facts: SheetFacts): PublicSheet => {
  switch (name) {
    case "cautions":
      return sheetIn(cautions, language, facts);
    case "data-protection":
      return sheetIn(dataProtection, language, facts);
    case "accessibility":
      return sheetIn(accessibility, language, facts);
    case "notices":
      return noticesSheet(language);
  }
};
