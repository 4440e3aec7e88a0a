import type { LateTexts } from "../text/late-texts.ts";
import { showEn } from "./show-en.ts";
import { showPl } from "./show-pl.ts";

export type ShowKey = keyof typeof showEn;

/** What the show says. */
export const showTexts: LateTexts<ShowKey> = { en: showEn, pl: showPl };
