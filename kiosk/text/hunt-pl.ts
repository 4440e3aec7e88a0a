import type { huntEn } from "./hunt-en.ts";

/** Sentences of a fault hunt, in Polish. */
export const huntPl: Record<keyof typeof huntEn, string> = {
  "hunt.count": "Usterek ukrytych w obwodzie: {count}. Znajdź je miernikiem, potem nazwij tutaj.",
  "hunt.what": "Co jest źle?",
  "hunt.where": "Gdzie to jest?",
  "hunt.cores": "W której żyle? L jest brązowa, N niebieska, E zielono-żółta.",
  "hunt.cores-two": "Które dwie żyły?",
  "hunt.name": "Nazwij",
  "hunt.named": "Nazwane",
  "hunt.none": "jeszcze nic",
  "hunt.back": "Cofnij",
  "hunt.later": "Czy to prawda, powiemy po oddaniu pracy.",
  "hunt.kind.open-core": "Przerwana żyła",
  "hunt.kind.high-resistance": "Zły styk",
  "hunt.kind.crossed-cores": "Zamienione żyły",
  "hunt.kind.wrong-cpc": "Za cienka żyła ochronna",
  "hunt.kind.missing-link": "Brak mostka",
  "hunt.kind.low-insulation": "Zła izolacja",

  "hunt.title": "Co było ukryte",
  "hunt.points": "Punkty: {points} z {most}",
  "hunt.right": "Nazwano ją dobrze.",
  "hunt.kind-only": "Nazwano, co jest źle, ale nie gdzie.",
  "hunt.place-only": "Nazwano miejsce, ale nie to, co jest źle.",
  "hunt.missed": "Nie nazwano jej.",
  "hunt.shown": "Pomiar w protokole pokazał ją, zanim została nazwana.",
  "hunt.not-shown": "Żaden pomiar w protokole nie pokazał jej, zanim została nazwana.",
  "hunt.order-kept": "Kolejność prób była dobra.",
  "hunt.order-lost": "Kolejność prób nie była dobra: najpierw ciągłość, potem izolacja.",
  "hunt.readings": "Zapisanych pomiarów: {count}.",
  "hunt.show": "Pokaż gdzie",
};
