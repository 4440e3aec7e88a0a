import type { progressEn } from "./progress-en.ts";

/** Sentences of how a learner gets better, in Polish. */
export const progressPl: Record<keyof typeof progressEn, string> = {
  "progress.title": "Jak mi idzie",
  "progress.next": "Poćwicz teraz",
  "progress.next.none": "Na dziś nic nie czeka. Wybierz dowolne zadanie.",
  "progress.for": "na: {title}",
  "progress.tripping": "Zasady, na których jeszcze się potykasz",
  "progress.tripping.none": "Żadna.",
  "progress.kept": "Zasady, których się trzymasz",
  "progress.kept.none": "Jeszcze żadna.",
  "progress.counts": "potknięć: {tripped}, dotrzymanych: {kept}",
  "progress.goes": "Co już zrobiono",
  "progress.outcome.met": "spełnione",
  "progress.outcome.not-yet": "jeszcze nie spełnione",
  "progress.outcome.cannot-say": "nie da się powiedzieć",
  "progress.outcome.left": "przerwane przed oddaniem",
  "progress.print": "Drukuj",
  "progress.file": "Zapisz plik",
  "progress.file-name": "moje-cwiczenia.txt",
  "progress.practice-only":
    "To dotyczy ćwiczeń na stanowisku do nauki. To nie jest świadectwo ani dowód, co wolno robić w prawdziwej pracy.",
};
