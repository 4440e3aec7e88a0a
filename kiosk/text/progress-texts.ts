import { progressEn } from "./progress-en.ts";
import { progressPl } from "./progress-pl.ts";
import type { LateTexts } from "./late-texts.ts";

export type ProgressKey = keyof typeof progressEn;

/** What is said of how a learner gets better. */
export const progressTexts: LateTexts<ProgressKey> = { en: progressEn, pl: progressPl };
