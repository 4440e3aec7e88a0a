import type { SheetText } from "./sheet-text.ts";

/**
 * What whoever works here is told of what is kept about them: a part for each thing that Article 13 of the (UK) General
 * Data Protection Regulation asks for.
 */
export const dataProtection: SheetText = {
  name: "data-protection",
  parts: [
    {
      heading: { en: "Who keeps it", pl: "Kto to przechowuje" },
      lines: [
        {
          en: "Your training centre is the controller: it decides what is kept and why. Ask your trainer how to reach the centre, and its data protection officer where it has one.",
          pl: "Administratorem jest Twój ośrodek: decyduje, co i po co się przechowuje. Zapytaj instruktora, jak skontaktować się z ośrodkiem i z jego inspektorem ochrony danych, jeśli go ma.",
        },
      ],
    },
    {
      heading: { en: "What is kept", pl: "Co się przechowuje" },
      lines: [
        {
          en: "Your name, your number at the centre where it gave one, a mark made from your badge code, and the adjustments that were agreed for you. They are sealed with a key of your own.",
          pl: "Twoje imię i nazwisko, numer w ośrodku, jeśli go nadał, znacznik zrobiony z kodu karty oraz ustalone dla Ciebie ułatwienia. Są zaszyfrowane Twoim własnym kluczem.",
        },
        {
          en: "What you did at the bench and when: cables, settings, readings, hints, what you handed in, and what was decided on it. These records have a number in place of your name.",
          pl: "Twoja praca na stanowisku i jej czas: kable, ustawienia, odczyty, rady, oddane prace i decyzje. W tych zapisach zamiast nazwiska jest numer.",
        },
        {
          en: "No photographs, no sound, no place. A guest leaves no name.",
          pl: "Żadnych zdjęć, dźwięku ani miejsca pobytu. Gość nie zostawia nazwiska.",
        },
      ],
    },
    {
      heading: { en: "What for, and by what right", pl: "Po co i na jakiej podstawie" },
      lines: [
        {
          en: "So that you can be taught and assessed, and so that a decision can be explained, checked and appealed against. Your centre tells you on which lawful basis it does so.",
          pl: "Żeby można było uczyć i oceniać oraz żeby decyzję dało się wyjaśnić, sprawdzić i się od niej odwołać. Ośrodek powie Ci, na jakiej podstawie prawnej to robi.",
        },
        {
          en: "To work here assessed you have to be known by name. To practise as a guest you do not.",
          pl: "Do ocenianej pracy trzeba podać, kim się jest. Do ćwiczeń jako gość nie trzeba.",
        },
      ],
    },
    {
      heading: { en: "Who sees it", pl: "Kto to widzi" },
      lines: [
        {
          en: "Your trainer, your assessor, the verifier and the technician of this bench. Your centre may pass evidence on to whoever awards your qualification. Other learners do not see it, and nothing leaves the bench by itself.",
          pl: "Twój instruktor, egzaminator, weryfikator i technik tego stanowiska. Ośrodek może przekazać dowody temu, kto nadaje kwalifikację. Inni uczniowie tego nie widzą i nic nie wychodzi stąd samo.",
        },
        {
          en: "The bench sends nothing to another country. If your centre does, it tells you so.",
          pl: "Stanowisko nie wysyła niczego do innego kraju. Jeśli robi to ośrodek, powie Ci o tym.",
        },
      ],
    },
    {
      heading: { en: "How long", pl: "Jak długo" },
      lines: [
        {
          en: "{keepYears} after you last worked here your centre erases your name, number and badge. It keeps them longer only while an appeal or the law asks for it.",
          pl: "Ośrodek trzyma nazwisko, numer i kartę jeszcze {keepYears} po Twojej ostatniej pracy tutaj, potem je usuwa. Dłużej trzyma je tylko wtedy, gdy wymaga tego odwołanie albo prawo.",
        },
        {
          en: "Erased means that the key to your name is gone for good. Records without a name stay, so that the others can still be proved.",
          pl: "Usunięcie znaczy, że klucz do Twojego nazwiska znika na zawsze. Zapisy bez nazwiska zostają, żeby nadal dało się sprawdzić pozostałe.",
        },
      ],
    },
    {
      heading: { en: "Your rights", pl: "Twoje prawa" },
      lines: [
        {
          en: "You may ask your centre to show you what is kept, to give you a copy, to put right what is wrong, to erase it, to use it less, and you may object. Where you gave consent you may take it back.",
          pl: "Możesz prosić ośrodek o wgląd, o kopię, o poprawienie błędów, o usunięcie, o ograniczenie używania, i możesz się sprzeciwić. Zgodę, jeśli była, możesz wycofać.",
        },
        {
          en: "You may complain to the authority for data protection: in the United Kingdom the Information Commissioner.",
          pl: "Możesz złożyć skargę do urzędu ochrony danych: w Zjednoczonym Królestwie to Information Commissioner.",
        },
      ],
    },
    {
      heading: { en: "No machine decides about you", pl: "Żadna maszyna o Tobie nie decyduje" },
      lines: [
        {
          en: "The bench compares your wiring with rules and proposes an answer. A person decides, and tells you why.",
          pl: "Stanowisko porównuje Twoje połączenia z regułami i proponuje odpowiedź. Decyduje człowiek i mówi Ci dlaczego.",
        },
      ],
    },
  ],
};
