import type { SheetText } from "./sheet-text.ts";

/** What could hurt somebody, and who may do real work. */
export const cautions: SheetText = {
  name: "cautions",
  parts: [
    {
      heading: { en: "Real circuits can kill", pl: "Prawdziwe obwody mogą zabić" },
      lines: [
        {
          en: "This is a training board. It runs at extra-low voltage. Nothing you learn here makes a real circuit safe to touch.",
          pl: "To jest tablica do nauki. Działa na bardzo niskim napięciu. Nic z tego, czego się tu uczysz, nie sprawia, że prawdziwego obwodu można dotknąć.",
        },
        {
          en: "On a real circuit: isolate, lock off, and prove dead with a tester that was itself proved before and after.",
          pl: "Na prawdziwym obwodzie: odłącz, zablokuj i sprawdź brak napięcia wskaźnikiem, który sam był sprawdzony przed tym i po tym.",
        },
        {
          en: "This screen, its meter and its tester are pictures. None of them is proof that anything is dead.",
          pl: "Ten ekran, jego miernik i jego wskaźnik to obrazki. Żaden z nich nie dowodzi, że nie ma napięcia.",
        },
      ],
    },
    {
      heading: { en: "Who may do real work", pl: "Kto może robić prawdziwą instalację" },
      lines: [
        {
          en: "Leave real work to people who are competent, and who are licensed or registered where the law asks for it. In England and Wales some work in homes has to be notified, or done by somebody who is registered (Building Regulations, Part P).",
          pl: "Prawdziwą pracę zostaw osobom z kwalifikacjami i z uprawnieniami albo wpisem do rejestru tam, gdzie wymaga tego prawo. W Anglii i Walii część prac w domach trzeba zgłosić albo zlecić osobie z rejestru (przepisy budowlane, część P).",
        },
        {
          en: "Work to the wiring rules that are in force where you are: in the United Kingdom that is BS 7671, in its current edition. Elsewhere other rules hold. Where they differ from this bench, they are right.",
          pl: "Pracuj według przepisów, które obowiązują u Ciebie: w Zjednoczonym Królestwie to BS 7671 w aktualnym wydaniu. Gdzie indziej obowiązują inne. Tam, gdzie różnią się od tego stanowiska, one mają rację.",
        },
        {
          en: "The figures of this bench are for teaching. Before anybody decides anything by them they have to be checked against the current standard and the maker's instructions.",
          pl: "Liczby na tym stanowisku służą nauce. Zanim ktoś coś na ich podstawie postanowi, trzeba je sprawdzić w aktualnej normie i w instrukcji producenta.",
        },
      ],
    },
    {
      heading: { en: "At the board", pl: "Przy tablicy" },
      lines: [
        {
          en: "Never plug a board lead into a real socket outlet, and never connect the board to the mains.",
          pl: "Nigdy nie wkładaj przewodu z tablicy do prawdziwego gniazda i nigdy nie łącz tablicy z siecią.",
        },
        {
          en: "A lead with bare metal, a hot part or a smell of burning: switch the bench off at its power supply and tell your trainer.",
          pl: "Przewód z gołym metalem, gorąca część albo zapach spalenizny: wyłącz zasilacz stanowiska i powiedz instruktorowi.",
        },
        {
          en: "A verdict of this bench is no certificate and no report for any installation.",
          pl: "Ocena tego stanowiska nie jest protokołem ani świadectwem dla żadnej instalacji.",
        },
      ],
    },
  ],
};
