import { huntEn } from "./hunt-en.ts";
import { huntPl } from "./hunt-pl.ts";
import type { LateTexts } from "./late-texts.ts";

export type HuntKey = keyof typeof huntEn;

/** What a fault hunt says. */
export const huntTexts: LateTexts<HuntKey> = { en: huntEn, pl: huntPl };
