import type { outcomeEn } from "./outcome-en.ts";

/** What a learner is told of the decision on assessed work, in Polish. */
export const outcomePl: Record<keyof typeof outcomeEn, string> = {
  "outcome.try-again": "Spróbuj jeszcze raz stąd",
  "outcome.like-this": "Inne zadanie tego rodzaju",
  "outcome.declare": "To moja własna praca",
  "outcome.declared": "Potwierdzono, że to własna praca.",
  "outcome.met": "Wszystko spełnione.",
  "outcome.not-yet": "Jeszcze nie.",
  "outcome.cannot-assess": "Przeszkodziło stanowisko: tego nie da się ocenić.",
  "outcome.title": "Co zdecydowano o twojej pracy",
  "outcome.next.resubmission": "Co dalej: możesz to poprawić i oddać ponownie.",
  "outcome.next.retake": "Co dalej: możesz to wykonać ponownie.",
  "outcome.next.re-sit": "Co dalej: możesz przystąpić ponownie.",
  "outcome.answer.met": "Spełnione:",
  "outcome.answer.not-yet": "Jeszcze nie:",
  "outcome.answer.cannot-assess": "Nie do oceny:",
};
