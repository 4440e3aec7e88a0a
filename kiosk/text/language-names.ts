import type { Language } from "../../shared/protocol/commands.schema.ts";

/** Each language by its own name, whatever language the screen speaks. */
export const languageNames: Record<Language, string> = { en: "English", pl: "Polski" };
