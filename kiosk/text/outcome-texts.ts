import { outcomeEn } from "./outcome-en.ts";
import { outcomePl } from "./outcome-pl.ts";
import type { LateTexts } from "./late-texts.ts";

type OutcomeKey = keyof typeof outcomeEn;

/** What a learner is told of the decision on assessed work. */
export const outcomeTexts: LateTexts<OutcomeKey> = { en: outcomeEn, pl: outcomePl };
