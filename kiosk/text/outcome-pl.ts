import type { outcomeEn } from "./outcome-en.ts";

/** What a learner is told of the decision on assessed work, in Polish. */
export const outcomePl: Record<keyof typeof outcomeEn, string> = {
  "outcome.try-again": "Spróbuj jeszcze raz stąd",
  "outcome.declare": "To moja własna praca",
  "outcome.declared": "Potwierdzono, że to własna praca.",
  "outcome.met": "Wszystko spełnione.",
  "outcome.not-yet": "Jeszcze nie.",
  "outcome.cannot-assess": "Przeszkodziło stanowisko: tego nie da się ocenić.",
  "outcome.answer.met": "Spełnione:",
  "outcome.answer.not-yet": "Jeszcze nie:",
  "outcome.answer.cannot-assess": "Nie do oceny:",
};
