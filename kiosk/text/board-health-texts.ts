import { boardHealthEn } from "./board-health-en.ts";
import { boardHealthPl } from "./board-health-pl.ts";
import type { LateTexts } from "./late-texts.ts";

export type BoardHealthKey = keyof typeof boardHealthEn;

/** What the sheet "Board health" says. */
export const boardHealthTexts: LateTexts<BoardHealthKey> = {
  en: boardHealthEn,
  pl: boardHealthPl,
};
