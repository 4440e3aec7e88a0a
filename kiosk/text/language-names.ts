import type { Language } from "../../shared/text/languages.ts";

/** Each language by its own name, whatever language the screen speaks. */
export const languageNames: Record<Language, string> = { en: "English", pl: "Polski" };
