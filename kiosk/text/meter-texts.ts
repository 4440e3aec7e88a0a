import { meterEn } from "./meter-en.ts";
import { meterPl } from "./meter-pl.ts";
import type { LateTexts } from "./late-texts.ts";

export type MeterKey = keyof typeof meterEn;

/** What the step Test says. */
export const meterTexts: LateTexts<MeterKey> = { en: meterEn, pl: meterPl };
