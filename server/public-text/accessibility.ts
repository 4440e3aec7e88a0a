import type { SheetText } from "./sheet-text.ts";

/** How far everybody can use the bench and its desk, what is known to be missing, and whom to tell. */
export const accessibility: SheetText = {
  name: "accessibility",
  parts: [
    {
      heading: { en: "What we aim at", pl: "Do czego dążymy" },
      lines: [
        {
          en: "Everybody in a workshop should be able to read, use and understand this bench. We work to the Web Content Accessibility Guidelines (WCAG) 2.2, level AA. No outside body has checked it yet: this is our own statement.",
          pl: "Każdy w warsztacie powinien móc to stanowisko przeczytać, obsłużyć i zrozumieć. Pracujemy według wytycznych WCAG 2.2, poziom AA. Nikt z zewnątrz jeszcze tego nie sprawdził: to nasza własna deklaracja.",
        },
      ],
    },
    {
      heading: { en: "What there is", pl: "Co jest" },
      lines: [
        {
          en: "Large letters one tap away; keys of 10 mm or more; dark ink on light paper with a contrast of 7 to 1 for text.",
          pl: "Duże litery jednym dotknięciem; klawisze co najmniej 10 mm; ciemny druk na jasnym tle z kontrastem tekstu 7 do 1.",
        },
        {
          en: "Nothing is told by colour alone: each core has its letter and its pattern of line, and each finding says in words how serious it is.",
          pl: "Nic nie zależy od samego koloru: każda żyła ma literę i wzór linii, a każda uwaga mówi słowami, jak jest poważna.",
        },
        {
          en: "Everything can be done by touch, with a mouse and with a keyboard, and every drag also by taps. What changes is said to screen readers, and the browser's own voice reads aloud where it has one.",
          pl: "Wszystko da się zrobić dotykiem, myszą i klawiaturą, a każde przeciąganie także dotknięciami. Zmiany są podawane czytnikom ekranu, a głos przeglądarki czyta na głos, jeśli go ma.",
        },
        {
          en: "Plain words, trade words explained on tap, English and Polish. Nothing blinks, and nothing moves while nothing happens.",
          pl: "Proste słowa, słowa fachowe wyjaśnione po dotknięciu, angielski i polski. Nic nie miga i nic się nie rusza, gdy nic się nie dzieje.",
        },
        {
          en: "More time, breaks, large letters and reading aloud can be agreed with your trainer. They are never held against you.",
          pl: "Więcej czasu, przerwy, duże litery i czytanie na głos można ustalić z instruktorem. Nigdy nie działają na Twoją niekorzyść.",
        },
      ],
    },
    {
      heading: { en: "What is missing", pl: "Czego brakuje" },
      lines: [
        {
          en: "The leads of the real board have to be plugged by hand. Somebody may plug them for you as you tell them.",
          pl: "Przewody prawdziwej tablicy trzeba wtykać ręką. Ktoś może to zrobić za Ciebie według Twoich poleceń.",
        },
        {
          en: "The drawing of the house is told to screen readers as a list of its cables and points, not as a picture. The plots of temperature are told by their figures alone.",
          pl: "Rysunek domu czytniki ekranu podają jako listę kabli i punktów, nie jako obraz. Wykresy temperatury podawane są tylko liczbami.",
        },
        {
          en: "Reading aloud needs a voice in the browser; the small panel of a bench may have none.",
          pl: "Czytanie na głos wymaga głosu w przeglądarce; mały panel stanowiska może go nie mieć.",
        },
      ],
    },
    {
      heading: { en: "How it was checked", pl: "Jak to sprawdzono" },
      lines: [
        {
          en: "By our own tests at each change: an open checker of web pages on every screen, sizes of letters and keys in millimetres, contrast, colour-blind views, keyboard alone. Not yet by people who use a screen reader every day.",
          pl: "Naszymi testami przy każdej zmianie: otwartym narzędziem do stron na każdym ekranie, rozmiarem liter i klawiszy w milimetrach, kontrastem, widokiem dla daltonistów, samą klawiaturą. Jeszcze nie przez osoby, które na co dzień używają czytnika ekranu.",
        },
      ],
    },
    {
      heading: { en: "If something stops you", pl: "Jeśli coś Ci przeszkadza" },
      lines: [
        {
          en: "Tell your trainer, or ask for another way to be assessed. Your centre has to make reasonable adjustments (in Great Britain: Equality Act 2010).",
          pl: "Powiedz instruktorowi albo poproś o inny sposób oceny. Ośrodek ma obowiązek wprowadzić racjonalne usprawnienia (w Wielkiej Brytanii: Equality Act 2010).",
        },
      ],
    },
  ],
};
