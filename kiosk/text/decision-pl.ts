import type { decisionEn } from "./decision-en.ts";

/** What the bench says of decisions: to their learner, and where an act is refused, in Polish. */
export const decisionPl: Record<keyof typeof decisionEn, string> = {
  "refused.no-such-attempt": "Nie ma takiej pracy.",
  "refused.not-assessed": "To jest ćwiczenie. Decyzja dotyczy tylko pracy na ocenę.",
  "refused.not-handed-in": "Ta praca nie jest jeszcze oddana.",
  "refused.declared-already": "To już zostało potwierdzone.",
  "refused.criteria-missing": "Oceń każde kryterium.",
  "refused.reason-missing": "Podaj powód.",
  "refused.ticks-missing": "Spełnione kryterium wymaga wszystkich czterech znaków.",
  "refused.decide-first": "Najpierw podejmij decyzję.",
  "refused.seal-first": "Najpierw zapieczętuj decyzję.",
  "refused.decision-sealed": "Ta decyzja jest zapieczętowana. Popraw ją i podaj powód.",
  "refused.released-already": "Uczeń już to widzi.",
  "refused.not-your-decision": "Decyzję podjął ktoś inny. Tylko on może ją zapieczętować.",
  "refused.not-blind": "Decyzja była już pokazana. Drugie spojrzenie musi być w ciemno.",
  "refused.nothing-to-sample": "Nie ma decyzji do wylosowania.",
  "outcome.declare": "To moja własna praca",
  "outcome.declared": "Potwierdzono, że to własna praca.",
  "outcome.met": "Wszystko spełnione.",
  "outcome.not-yet": "Jeszcze nie.",
  "outcome.cannot-assess": "Przeszkodziło stanowisko: tego nie da się ocenić.",
  "outcome.answer.met": "Spełnione:",
  "outcome.answer.not-yet": "Jeszcze nie:",
  "outcome.answer.cannot-assess": "Nie do oceny:",
};
