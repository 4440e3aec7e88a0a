import type { Request } from "express";
import { type Language, languages } from "../../shared/text/languages.ts";

/** The language that an address asks for; another where it names none. */
export const languageAsked = ({ query }: Pick<Request, "query">, otherwise: Language = "en"): Language =>
  languages.find((one) => one === query["language"]) ?? otherwise;
