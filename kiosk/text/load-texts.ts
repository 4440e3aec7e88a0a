import { loadEn } from "./load-en.ts";
import { loadPl } from "./load-pl.ts";
import type { LateTexts } from "./late-texts.ts";

export type LoadKey = keyof typeof loadEn;

/** What the step Load says. */
export const loadTexts: LateTexts<LoadKey> = { en: loadEn, pl: loadPl };
