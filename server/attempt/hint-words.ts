import type { Language } from "../../shared/text/languages.ts";
import type { Text } from "../../shared/text/text.schema.ts";

/** First hints where the scenario has none of its own: a nudge that names nothing. */
export const hintWords = {
  lookAgain: {
    en: "Something here needs another look. Follow every cable from end to end.",
    pl: "Coś tu trzeba sprawdzić jeszcze raz. Prześledź każdy kabel od końca do końca.",
  },
  asksMore: {
    en: "Nothing is wrong so far, but the task asks for more. Read it again.",
    pl: "Na razie nic nie jest źle, ale zadanie wymaga więcej. Przeczytaj je jeszcze raz.",
  },
  nothingLeft: {
    en: "The bench sees nothing to put right. You can hand in.",
    pl: "Stanowisko nie widzi nic do poprawy. Możesz oddać pracę.",
  },
  valueMissing: {
    en: "Something has not been chosen yet. Look for a cable without a size or a device without a rating.",
    pl: "Czegoś jeszcze nie wybrano. Poszukaj kabla bez przekroju lub wyłącznika bez prądu znamionowego.",
  },
} as const satisfies Record<string, Text>;

/** Said after the first things to do, where there are more. */
export const moreToDo = {
  en: (count: number) => `Things to do after that: ${count}.`,
  pl: (count: number) => `Do zrobienia potem: ${count}.`,
} as const satisfies Record<Language, (count: number) => string>;
