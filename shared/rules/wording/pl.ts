import type { Translated } from "./catalogue.ts";
import type { en } from "./en.ts";

const rcdRemedy = "Zabezpiecz to pole wyłącznikiem różnicowoprądowym (RCD) {mostMa}.";
const lateFault = "Tutaj sam wyłącznik nie wyłączy zwarcia na czas: niebezpieczeństwo porażenia i pożaru.";
const cable = "{cable} ma {csaMm2}. Tak jak leży, ma obciążalność {ratingA}.";
const deviceTooLate =
  "Zabezpieczenie {deviceA} przepuszcza {deviceA} całymi godzinami. Kabel może się przegrzać, zanim ono zadziała.";
const manyCables = {
  title: "Zabezpieczenie nie chroni tych kabli",
  what: "Te kable mają {csaMm2}: {places}. Tak jak leżą, mają obciążalność {ratingA}.",
};
const largerCable =
  "Weź kabel o większym przekroju albo mniejsze zabezpieczenie, które wystarczy na obciążenie. Jeśli kabel leży w cieple, przełóż go.";
const rewirable = {
  title: "Bezpiecznik nie chroni tego kabla",
  what: `${cable.slice(0, -1)}, a za bezpiecznikiem topikowym z drutem tylko {allowedA}.`,
  why: "Bezpiecznik z drutem {deviceA} działa późno. Dlatego obciążalność liczy się za mniej: {allowedA}, a to za mało.",
  remedy: "Daj wyłącznik nadprądowy albo kabel o większym przekroju.",
  several: {
    title: "Bezpiecznik nie chroni tych kabli",
    what: `${manyCables.what.slice(0, -1)}, a za bezpiecznikiem topikowym z drutem tylko {allowedA}.`,
  },
};

/** Polish sentences of every rule. */
export const pl: Translated<typeof en> = {
  // Przewody
  short: {
    title: "Zwarcie",
    variants: {
      "line-neutral": {
        what: "Faza łączy się z przewodem neutralnym: {causes}.",
        why: "W prawdziwym domu od razu popłynąłby ogromny prąd: błysk i niebezpieczeństwo pożaru, zanim wyłącznik go przerwie.",
        remedy: "Wyjmij przewód, który łączy fazę z przewodem neutralnym, i włóż go we właściwy styk.",
      },
      "line-earth": {
        what: "Faza łączy się z przewodem ochronnym: {causes}.",
        why: "W prawdziwym domu popłynąłby ogromny prąd, a metalowe obudowy w tym obwodzie mogłyby być pod napięciem, zanim zadziała wyłącznik: niebezpieczeństwo porażenia i pożaru.",
        remedy: "Wyjmij przewód, który łączy fazę z przewodem ochronnym, i włóż go we właściwy styk.",
      },
    },
  },
  "neutral-earth": {
    title: "Przewód neutralny łączy się z ochronnym",
    variants: {
      joined: {
        what: "Przewód neutralny i ochronny są połączone: {causes}.",
        why: "Prąd wracałby przewodem ochronnym i metalowymi częściami. RCD by zadziałał albo zawiódł: niebezpieczeństwo porażenia.",
        remedy: "Rozłącz je. W obwodzie te dwa przewody nigdy się nie łączą.",
      },
    },
  },
  "two-ways": {
    title: "Dwa pola są połączone",
    variants: {
      line: {
        what: "Fazy tych pól spotykają się w instalacji: {ways}.",
        why: "Gdy jedno jest wyłączone, drugie dalej zasila obwód. Kto myśli, że nie ma napięcia, może zostać porażony.",
        remedy: "Każdy obwód ma swoje pole. Przełóż kabel, który przechodzi do drugiego obwodu.",
      },
      "ring-ends": {
        what: "Dwa końce pierścienia są w różnych polach: {ways}.",
        why: "Gdy jedno jest wyłączone, drugie dalej zasila pierścień. Kto myśli, że nie ma napięcia, może zostać porażony.",
        remedy: "Przyłącz oba końce pierścienia do tego samego pola.",
      },
    },
  },
  "borrowed-neutral": {
    title: "Pożyczony przewód neutralny",
    variants: {
      only: {
        what: "{places}: faza jest z jednego obwodu, a przewód neutralny z innego.",
        why: "Gdy obwód tej fazy jest wyłączony, przewód neutralny może być pod napięciem z drugiego: niebezpieczeństwo porażenia. RCD też by zadziałał.",
        remedy: "Doprowadź przewód neutralny z tego samego obwodu, a pożyczony odłącz.",
      },
      also: {
        what: "{places}: przewód neutralny prowadzi do swojego obwodu i jeszcze do innego.",
        why: "Prąd wracałby obiema drogami. Gdy jeden obwód jest wyłączony, przewód neutralny może być pod napięciem: niebezpieczeństwo porażenia. RCD też by zadziałał.",
        remedy: "Odłącz przewód neutralny, który prowadzi do innego obwodu.",
      },
    },
  },
  polarity: {
    title: "Zamienione przewody",
    variants: {
      crossed: {
        what: "Połączone są: {from} i {to}.",
        why: "Łącznik albo bezpiecznik może wtedy przerwać zły przewód. To, co wygląda na odłączone, albo metal, którego ktoś dotknie, może być pod napięciem: niebezpieczeństwo porażenia.",
        remedy: "Zamień przewody: faza do fazy, neutralny do neutralnego, ochronny do ochronnego.",
      },
    },
  },
  "split-conductors": {
    title: "Przewody różnymi drogami",
    variants: {
      split: {
        what: "Przewody jednego zasilania (faza, neutralny, ochronny) nie idą razem: {places}.",
        why: "Gdy idą razem, ich pola magnetyczne się znoszą. Osobno mogą grzać stal wokół siebie i nikt ich potem nie znajdzie.",
        remedy:
          "Poprowadź fazę, przewód neutralny i ochronny obok siebie, z tego samego miejsca w to samo miejsce.",
      },
    },
  },
  "cpc-missing": {
    title: "Brak przewodu ochronnego",
    variants: {
      missing: {
        what: "Przewód ochronny nie dochodzi do: {places:gen}.",
        why: "Gdyby faza dotknęła tam metalu, zostałby pod napięciem. Kto go dotknie, zostanie porażony.",
        remedy: "Doprowadź tam przewód ochronny (E) od pola, bez przerwy.",
      },
    },
  },
  "conductor-missing": {
    title: "Brak przewodu",
    variants: {
      "neutral-live": {
        title: "Brak przewodu neutralnego, a jest napięcie",
        what: "Faza dochodzi, a przewód neutralny nie: {places}.",
        why: "Nic nie działa, więc wygląda na odłączone. A jest pod napięciem: niebezpieczeństwo porażenia.",
        remedy: "Doprowadź tam przewód neutralny (N) z pola tego obwodu.",
      },
      neutral: {
        title: "Brak przewodu neutralnego",
        what: "Przewód neutralny nie dochodzi do: {places:gen}.",
        why: "Prąd musi mieć drogę powrotną. Nic tam nie zadziała.",
        remedy: "Doprowadź tam przewód neutralny (N) z pola tego obwodu.",
      },
      line: {
        title: "Brak fazy",
        what: "Faza nie dochodzi do: {places:gen}.",
        why: "Nic tam nie zadziała.",
        remedy: "Doprowadź tam fazę (L) z pola tego obwodu.",
      },
    },
  },
  "wrong-side": {
    title: "Zasilanie z niewłaściwej strony",
    reference:
      "Producent oznacza zaciski zasilania i odbioru. Przepis: BS 7671:2018, 134.1.1, każe stosować się do instrukcji producenta.",
    variants: {
      "fed-from-load": {
        what: "Zasilanie wchodzi od strony odbioru w {place:loc}.",
        why: "Zasilanie i odbiór są wtedy zamienione. Po wyłączeniu albo po wyjęciu bezpiecznika zaciski, które powinny być bez napięcia, dalej je mają.",
        remedy: "Przyłącz zasilanie po stronie zasilania, a to, co zasilane, po stronie odbioru.",
      },
    },
  },
  "ring-through-fuse": {
    title: "Pierścień przez bezpiecznik",
    variants: {
      through: {
        what: "Pierścień wchodzi po stronie zasilania w {place:loc} i wychodzi po stronie odbioru.",
        why: "Część pierścienia jest wtedy za bezpiecznikiem. Dwa ramiona nie dzielą już prądu, jak powinny, i bezpiecznik może się przepalić.",
        remedy:
          "Poprowadź pierścień przez stronę zasilania. Strona odbioru jest dla tego, co chroni bezpiecznik.",
      },
      parallel: {
        what: "Strona odbioru jest zasilana z więcej niż jednego miejsca naraz: {places}.",
        why: "Gdy wyjmiesz jeden bezpiecznik, inna droga dalej daje napięcie. Bezpiecznik niczego nie chroni: niebezpieczeństwo porażenia i pożaru.",
        remedy: "Zasilaj stronę odbioru tylko przez jeden bezpiecznik.",
      },
    },
  },
  "not-served": {
    title: "Tu jeszcze nie ma zasilania",
    reference: "Tego chce zadanie.",
    variants: {
      "not-served": {
        what: "Zasilanie nie dochodzi do: {places:gen}.",
        why: "W zadaniu ma to działać.",
        remedy: "Doprowadź tam fazę, przewód neutralny i ochronny z obwodu.",
        several: {
          what: "Zasilanie nie dochodzi do: {places:gen}.",
        },
      },
    },
  },
  "outside-task": {
    title: "Poza zadaniem",
    reference: "Zadanie mówi, których części tablicy używa.",
    variants: {
      "outside-task": {
        what: "{place} prowadzi do części tablicy, której to zadanie nie używa.",
        why: "Może został po wcześniejszej pracy.",
        remedy: "Wyjmij go, jeśli nie jest potrzebny.",
      },
    },
  },
  "dead-end-lead": {
    title: "Przewód donikąd",
    variants: {
      live: {
        what: "{place} kończy się tam, gdzie nic nie jest zasilane, i byłby pod napięciem.",
        why: "O końcu pod napięciem, który nic nie zasila, łatwo zapomnieć, a potem ktoś go dotknie: niebezpieczeństwo porażenia.",
        remedy: "Wyjmij go albo połącz z tym, co ma zasilać.",
      },
      dead: {
        what: "{place} kończy się tam, gdzie nic nie jest zasilane.",
        why: "Nikt nie wie, do czego służy.",
        remedy: "Wyjmij go albo połącz z tym, co ma zasilać.",
      },
      island: {
        what: "{places}: połączone ze sobą, ale z żadnym polem.",
        why: "Do tej części tablicy nie dochodzi zasilanie.",
        remedy: "Połącz ją z obwodem albo wyjmij.",
      },
    },
  },
  "crowded-contact": {
    title: "Wtyczka na wtyczce",
    variants: {
      stacked: {
        what: "Na jednym styku jest więcej niż jedna wtyczka: {places}.",
        why: "Tablica nie wie, który kabel dokąd idzie. W prawdziwym zacisku zbyt wiele żył może się poluzować.",
        remedy: "Daj każdemu przewodowi własny styk. Użyj innego wejścia.",
      },
    },
  },
  "self-lead": {
    title: "Przewód w obrębie jednego miejsca",
    variants: {
      loop: {
        what: "Oba końce są w jednym miejscu: {place}.",
        why: "Łączy to, co w środku i tak jest połączone, więc nic nie daje.",
        remedy: "Wyjmij go albo przełóż jeden koniec tam, gdzie miał być.",
      },
      bypass: {
        what: "{place} łączy stronę zasilania ze stroną odbioru.",
        why: "Omija bezpiecznik albo łącznik. Nic wtedy nie odetnie prądu: niebezpieczeństwo pożaru i porażenia.",
        remedy: "Wyjmij go.",
      },
    },
  },

  // Kształt
  "ring-open": {
    title: "Pierścień jest przerwany",
    variants: {
      open: {
        what: "Pierścień się nie zamyka.[ Przerwane: {cores}.] Miejsce: {places}.",
        why: "W pierścieniu prąd dzieli się na dwa ramiona. Gdy przerwana jest faza lub przewód neutralny, jedno ramię może przenosić wszystko, a jego kabel może mieć na to za mały przekrój. Gdy przerwany jest przewód ochronny, zostaje tylko jedna droga do ziemi.",
        remedy:
          "Przejdź każdym przewodem od pola i z powrotem. Zamknij wszystkie trzy: fazę, przewód neutralny i ochronny.",
      },
    },
  },
  "ring-bridged": {
    title: "Skrót w poprzek pierścienia",
    variants: {
      bridged: {
        what: "Kabel skraca drogę w poprzek pierścienia.",
        why: "Prąd nie dzieli się już jak w pierścieniu. Próba pierścienia w trzech krokach go nie sprawdzi.",
        remedy: "Wyjmij kabel, który idzie w poprzek. Pierścień to jedna droga w koło.",
      },
    },
  },
  "ring-loop": {
    title: "Pętla, która omija pole",
    variants: {
      loop: {
        what: "Kable tworzą tu pętlę, która nie przechodzi przez pole: {places}.",
        why: "Cały prąd pętli wchodzi w jednym miejscu. To nie jest pierścień i próba pierścienia jej nie sprawdzi.",
        remedy: "Wyjmij jeden kabel z pętli albo doprowadź oba jej końce do pola.",
      },
      fused: {
        title: "Pętla za bezpiecznikiem",
        what: "Kable tworzą pętlę za bezpiecznikiem: {places}.",
        why: "Bezpiecznik chroni każdy jej kabel, ale to nie jest zwykły układ i próby bez napięcia nic o nim nie powiedzą.",
        remedy: "Wyjmij jeden kabel z pętli albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },
  "two-rings": {
    title: "Dwa pierścienie w jednym polu",
    variants: {
      two: {
        what: "Dwa pierścienie wychodzą z {place:gen}.",
        why: "Jeden wyłącznik przenosi prąd obu. Przy pomiarach łatwo pomylić ich końce.",
        remedy: "Daj każdemu pierścieniowi własne pole albo powiedz, dlaczego oba są w jednym.",
      },
    },
  },
  "ring-cable": {
    title: "Za mały przekrój kabla w pierścieniu",
    variants: {
      small: {
        what: "{cable} ma {csaMm2}.",
        why: "Pierścień potrzebuje co najmniej {leastCsaMm2}.[ Wyłącznik przepuszcza {deviceA}.] Kabel o mniejszym przekroju mógłby się przegrzać.",
        remedy: "Weź na cały pierścień kabel {leastCsaMm2} albo o większym przekroju.",
        several: {
          what: "Te kable pierścienia mają {csaMm2}: {places}.",
        },
      },
      underrated: {
        what: cable,
        why: "Każdy kabel pierścienia musi mieć obciążalność co najmniej {leastA}. Ocieplenie, ciepłe miejsce albo inne kable obok zatrzymują jego ciepło.",
        remedy: "Połóż go tam, gdzie odda ciepło, albo weź kabel o większym przekroju.",
        several: {
          what: "Te kable pierścienia mają {csaMm2}: {places}. Tak jak leżą, mają obciążalność {ratingA}.",
          why: "Każdy kabel pierścienia musi mieć obciążalność co najmniej {leastA}. Ocieplenie, ciepłe miejsce albo inne kable obok zatrzymują ich ciepło.",
        },
      },
    },
  },
  "ring-device": {
    title: "Niewłaściwy wyłącznik dla pierścienia",
    variants: {
      over: {
        what: "{place} ma wyłącznik {deviceA} przy pierścieniu.",
        why: "Pierścień może mieć najwyżej {mostA}. Powyżej kabel ramienia mógłby się przegrzać, zanim wyłącznik zadziała.",
        remedy: "Daj wyłącznik {mostA}.",
      },
      under: {
        what: "{place} ma wyłącznik {deviceA} przy pierścieniu.",
        why: "Zwykły pierścień ma od {leastA} do {mostA}. Mniejszy wyłącznik jest bezpieczny, ale może często wyłączać.",
        remedy: "Nic nie trzeba robić. Sprawdź, czy nie miało być {mostA}.",
      },
    },
  },
  "ring-share": {
    title: "Jedno ramię przenosi za dużo",
    variants: {
      share: {
        what: "Przy obciążeniu z tego zadania jedno ramię pierścienia przenosi {legA}.",
        why: "Obciążalność jego kabla to {ratingA}. Duże odbiory są blisko jednego końca, więc bliższe ramię bierze większość prądu.",
        remedy:
          "Umieść duże odbiory bliżej środka pierścienia albo w osobnym obwodzie, albo powiedz, jak długo działają.",
      },
      long: {
        what: "Przy obciążeniu z tego zadania jedno ramię pierścienia przenosi {legA} przez wiele godzin.",
        why: "Obciążalność jego kabla to {ratingA}. Przez wiele godzin to za dużo, a wyłącznik nie zadziała.",
        remedy: "Umieść duże odbiory bliżej środka pierścienia albo w osobnym obwodzie.",
      },
    },
  },
  "spur-one-point": {
    title: "Za dużo punktów na odgałęzieniu",
    variants: {
      several: {
        what: "Więcej niż jeden punkt jest na odgałęzieniu, które zaczyna {cause}.",
        why: "Odgałęzienie bez bezpiecznika zasila jeden punkt: jedno gniazdo pojedyncze albo podwójne, albo jedno stałe urządzenie.[ W najgorszym razie płynęłoby nim {worstA}, a obciążalność jego kabla to tylko {ratingA}.]",
        remedy:
          "Zostaw na odgałęzieniu jeden punkt, a resztę zasil z miejsc, które nie są na odgałęzieniu. Albo daj przed wszystkie złącze FCU z bezpiecznikiem 13 A.",
      },
    },
  },
  "spur-on-spur": {
    title: "Odgałęzienie z odgałęzienia",
    variants: {
      beyond: {
        what: "{cause} idzie dalej z punktu, który już jest na odgałęzieniu.",
        why: "Odgałęzienie bez bezpiecznika kończy się na pierwszym punkcie.[ Z oboma punktami jego kablem płynęłoby w najgorszym razie {worstA}, a jego obciążalność to tylko {ratingA}.]",
        remedy:
          "Zasil dalszy punkt z miejsca, które nie jest na odgałęzieniu, albo daj na początku odgałęzienia złącze FCU z bezpiecznikiem 13 A.",
      },
    },
  },
  "spur-per-point": {
    title: "Dwa odgałęzienia z jednego miejsca",
    variants: {
      two: {
        what: "Więcej niż jedno odgałęzienie bez bezpiecznika wychodzi z {place:gen}.",
        why: "Gdy z każdego punktu wychodzi tylko jedno, prąd rozkłada się na cały obwód i w zaciskach nie jest ciasno.",
        remedy: "Przełóż jedno z odgałęzień do innego punktu, który nie jest na odgałęzieniu.",
      },
    },
  },
  "spur-count": {
    title: "Dużo odgałęzień",
    variants: {
      many: {
        what: "Odgałęzienia bez bezpiecznika w tym pierścieniu: {spurs}. Punkty na samym pierścieniu: {ringPoints}.",
        why: "Według zaleceń takich odgałęzień nie może być więcej niż punktów na pierścieniu.",
        remedy: "Włącz część punktów w pierścień albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },
  "spur-cable": {
    title: "Za mały przekrój kabla odgałęzienia",
    variants: {
      small: {
        what: "{cable} to odgałęzienie. Ma {csaMm2}.",
        why: "Przy wyłączniku {deviceA} odgałęzienie bez bezpiecznika potrzebuje co najmniej {leastCsaMm2}. Na kabel o mniejszym przekroju ten wyłącznik jest o wiele za duży.",
        remedy: "Weź na odgałęzienie kabel {leastCsaMm2} albo o większym przekroju.",
      },
      overload: {
        what: "{cable} to odgałęzienie. Ma {csaMm2}, a tak jak leży, ma obciążalność {ratingA}.",
        why: "{point} może w najgorszym razie brać {worstA}. Wyłącznik {deviceA} przy tym nie zadziała i kabel się przegrzeje.",
        remedy:
          "Weź kabel o większym przekroju. Jeśli leży w cieple, przełóż go. Do 13 A możesz dać przed nim złącze FCU.",
      },
      slim: {
        title: "Przekrój kabla odgałęzienia ledwie wystarcza",
        what: "{cable} to odgałęzienie. Ma {csaMm2}, a tak jak leży, ma obciążalność {ratingA}.",
        why: "{point} bierze w najgorszym razie {worstA}, więc to wystarczy. Ale w tym obwodzie odgałęzienie powinno mieć obciążalność {leastA}.",
        remedy: "Powiedz, dlaczego tu wystarczy, albo weź kabel o większym przekroju.",
      },
    },
  },
  "spur-heavy": {
    title: "Odnoga z kilkoma punktami przy pierścieniu",
    variants: {
      several: {
        what: "Z pierścienia odchodzi kablem o dużym przekroju odnoga do kilku punktów. Miejsca: {places}.",
        why: "Wyłącznik chroni ten kabel. Ale cały prąd odnogi wchodzi w pierścień w jednym miejscu.",
        remedy: "Powiedz, dlaczego tu tak jest dobrze, albo włącz punkty w pierścień.",
      },
    },
  },
  "radial-cable": {
    title: "Zabezpieczenie nie chroni tego kabla",
    variants: {
      underrated: { what: cable, why: deviceTooLate, remedy: largerCable, several: manyCables },
      "semi-enclosed": rewirable,
    },
  },
  "device-cable": {
    title: "Zabezpieczenie nie chroni tego kabla",
    variants: {
      underrated: { what: cable, why: deviceTooLate, remedy: largerCable, several: manyCables },
      "semi-enclosed": rewirable,
    },
  },
  "own-circuit": {
    title: "To wymaga osobnego obwodu",
    variants: {
      cooking: {
        what: "{point} ma wspólny obwód z innymi: {others}.",
        why: "Gotowanie bierze dużo prądu przez długi czas. Razem z innymi urządzeniami wyłącznik mógłby wyłączać.",
        remedy: "Zasil to z osobnego pola, bez niczego innego, przez łącznik kuchenki.",
      },
      "water-heater": {
        what: "{point} ma wspólny obwód z innymi: {others}.",
        why: "Podgrzewacz ponad {overLitres} działa przez wiele godzin. Razem z innymi urządzeniami wyłącznik mógłby wyłączać.",
        remedy: "Zasil to z osobnego pola, bez niczego innego.",
      },
      shower: {
        what: "{point} ma wspólny obwód z innymi: {others}.",
        why: "Prysznic bierze prawie wszystko, co mogą dać wyłącznik i kabel. Dla innych urządzeń nic nie zostaje.",
        remedy: "Zasil to z osobnego pola, bez niczego innego.",
      },
    },
  },
  "heavy-on-ring": {
    title: "Duże obciążenie w pierścieniu",
    variants: {
      cooking: {
        what: "Z pierścienia bierze prąd {point}[: {powerW}].",
        why: "Gotowanie ponad {limitW} bierze dużo prądu w jednym miejscu przez długi czas. Pierścień jest dla odbiorów rozłożonych.",
        remedy: "Daj osobny obwód albo powiedz, dlaczego tu tak jest dobrze.",
      },
      "water-heater": {
        what: "Z pierścienia bierze prąd {point}[: {powerW}].",
        why: "Podgrzewacz ponad {overLitres} bierze prąd w jednym miejscu przez wiele godzin. Pierścień jest dla odbiorów rozłożonych.",
        remedy: "Daj osobny obwód albo powiedz, dlaczego tu tak jest dobrze.",
      },
      "space-heating": {
        what: "Ogrzewanie jest zasilane z pierścienia: {places}[, razem {powerW}].",
        why: "Piec akumulacyjny albo ogrzewanie całego domu bierze prąd przez wiele godzin. Pierścień jest dla odbiorów, które się włączają i wyłączają.",
        remedy: "Daj ogrzewaniu osobny obwód albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },
  "cooker-control": {
    title: "Łącznik kuchenki",
    variants: {
      none: {
        title: "Brak łącznika kuchenki",
        what: "Brakuje łącznika kuchenki. Dotyczy: {point}.",
        why: "Gdy coś się zapali na kuchence, trzeba móc wyłączyć prąd bez sięgania nad nią.",
        remedy: "Zasil przez łącznik kuchenki, nie dalej niż {mostM} od niej.",
      },
      far: {
        title: "Łącznik kuchenki jest za daleko",
        what: "Odległość od łącznika do {point:gen} to {distanceM}.",
        why: "Zalecenia mówią: najwyżej {mostM}, żeby było go widać i można było od razu sięgnąć.",
        remedy: "Użyj łącznika, który jest bliżej.",
      },
    },
  },
  isolation: {
    title: "Nie ma czym odłączyć zasilania",
    variants: {
      none: {
        what: "Nic nie odłącza fazy i przewodu neutralnego. Dotyczy: {point}.",
        why: "Kto to naprawia, musi móc odłączyć napięcie na miejscu.",
        remedy:
          "Zasil przez rozłącznik dwubiegunowy o dość dużym prądzie znamionowym. Do 13 A wystarczy złącze z bezpiecznikiem i łącznikiem (FCU).",
      },
      "fuse-only": {
        title: "Odłącza tylko bezpiecznik",
        what: "Dla {point:gen} odłączenie jest możliwe tylko przez wyjęcie bezpiecznika w {by:loc}.",
        why: "Dla kotła to wystarczy, jeśli tak powie projektant. Łącznik jest szybszy i bezpieczniejszy.",
        remedy:
          "Użyj złącza z bezpiecznikiem i łącznikiem (FCU) albo powiedz, dlaczego bezpiecznik wystarczy.",
      },
    },
  },
  "switched-neutral": {
    title: "Łącznik jest w przewodzie neutralnym",
    variants: {
      neutral: {
        what: "{switch} przerywa przewód neutralny, a nie fazę. Dotyczy: {place}.",
        why: "Po wyłączeniu lampa nie świeci, ale jest pod napięciem. Kto ją wymienia, może zostać porażony.",
        remedy: "Wstaw łącznik w fazę.",
      },
    },
  },
  unswitched: {
    title: "Brak łącznika",
    variants: {
      none: {
        what: "Nic tego nie wyłącza: {places}.",
        why: "Światło potrzebuje łącznika w fazie.",
        remedy: "Poprowadź fazę przez łącznik, zanim dojdzie do światła.",
      },
      "no-return": {
        title: "Faza załączana nie wraca",
        what: "Faza załączana nie wraca do: {places:gen}.",
        why: "Lampę przy rozecie zasila faza załączana. Bez niej lampa nie świeci albo nie da się jej wyłączyć.",
        remedy: "Poprowadź fazę do łącznika, a fazę załączaną z powrotem do rozety.",
      },
    },
  },
  "always-on": {
    title: "Światło nigdy nie gaśnie",
    variants: {
      on: {
        what: "Cokolwiek zrobi łącznik, światło się pali: {causes}.",
        why: "Faza dochodzi tam z pominięciem łącznika.",
        remedy: "Doprowadź do światła fazę załączaną (SL), a nie fazę (L).",
      },
    },
  },
  "half-switched": {
    title: "Łączniki schodowe nie działają niezależnie",
    variants: {
      half: {
        what: "Nie każdy łącznik sam zapala i gasi to światło: {place}.",
        why: "Każdy łącznik ma zapalać i gasić światło, cokolwiek zrobią inne. Potrzebne są do tego obie żyły korespondencyjne (S1 i S2), a przewód na każdym zacisku wspólnym (C) musi być właściwy.",
        remedy:
          "Połącz łączniki: S1 z S1 i S2 z S2. Żadna żyła korespondencyjna nie może trafić na zacisk wspólny (C).",
      },
    },
  },
  "lighting-device": {
    title: "Niewłaściwy wyłącznik albo kabel do oświetlenia",
    variants: {
      over: {
        title: "Za duży wyłącznik do oświetlenia",
        what: "{place} ma wyłącznik {deviceA} i zasila oświetlenie.",
        why: "Do oświetlenia wyłącznik może mieć najwyżej {mostA}. Zwykle daje się 6 A albo 10 A. Większy nie chroni oprawek i cienkiego kabla.",
        remedy:
          "Daj wyłącznik 6 A albo 10 A albo zasil oświetlenie przez złącze FCU z bezpiecznikiem 3 A lub 5 A.",
      },
      small: {
        title: "Za mały przekrój kabla do oświetlenia",
        what: "{cable} ma {csaMm2}.",
        why: "Kabel do oświetlenia musi mieć co najmniej {leastCsaMm2}, żeby był mocny i nie pękł.",
        remedy: "Weź kabel {leastCsaMm2} albo 1,5 mm².",
        several: {
          what: "Te kable mają {csaMm2}: {places}.",
        },
      },
    },
  },
  "lighting-load": {
    title: "Dużo lamp w jednym obwodzie",
    variants: {
      many: {
        what: "{place} ma wyłącznik {deviceA}. Liczba lamp w tym obwodzie: {pointCount}.",
        why: "Ich moc się mieści. Ale zwykle jest ich około {usualCount}: przy tylu jedna usterka zaciemni dużą część domu.",
        remedy: "Podziel lampy na dwa obwody albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },

  // Prądy
  "design-current": {
    title: "Obciążenie za duże na ten wyłącznik",
    variants: {
      over: {
        what: "Obciążenie to {designA}. Miejsce: {place}.",
        why: "Wyłącznik ma {deviceA}. To za mało: może wyłączać w czasie pracy.",
        remedy:
          "Podziel obciążenie na dwa obwody albo daj większy wyłącznik z odpowiednim kablem, jeśli w takim obwodzie wolno.",
      },
    },
  },
  "least-size": {
    title: "Przekrój kabla mniejszy, niż wolno",
    variants: {
      power: {
        what: "{cable} ma {csaMm2}.",
        why: "Stały kabel do gniazd i urządzeń musi mieć co najmniej {leastCsaMm2}, żeby był mocny i nie pękł.",
        remedy: "Weź kabel {leastCsaMm2} albo o większym przekroju.",
        several: {
          what: "Te kable mają {csaMm2}: {places}.",
        },
      },
      lighting: {
        what: "{cable} ma {csaMm2}.",
        why: "Stały kabel do oświetlenia musi mieć co najmniej {leastCsaMm2}, żeby był mocny i nie pękł.",
        remedy: "Weź kabel {leastCsaMm2} albo o większym przekroju.",
        several: {
          what: "Te kable mają {csaMm2}: {places}.",
        },
      },
    },
  },
  "fuse-size": {
    title: "Za duży bezpiecznik",
    variants: {
      "over-unit": {
        what: "{place} ma bezpiecznik {fuseA}.",
        why: "Złącze z bezpiecznikiem (FCU) jest najwyżej na {mostA}.",
        remedy: "Daj bezpiecznik {mostA} albo mniejszy.",
      },
      "over-allowed": {
        what: "{place} ma bezpiecznik {fuseA} i zasila: {point}.",
        why: "Dopuszczone jest tam najwyżej {mostA}. Większy bezpiecznik nie chroni części w środku.",
        remedy: "Daj bezpiecznik {mostA}.",
        reference: "Instrukcja producenta: stosować się do niej każe BS 7671:2018, 134.1.1.",
      },
      lighting: {
        title: "Duży bezpiecznik do oświetlenia",
        what: "{place} ma bezpiecznik {fuseA} i zasila oświetlenie.",
        why: "Do oświetlenia zwykle daje się 3 A albo {mostA}. Większy bezpiecznik gorzej chroni cienki kabel i łączniki.",
        remedy: "Daj bezpiecznik 3 A albo 5 A albo powiedz, dlaczego tu większy jest dobry.",
      },
    },
  },
  "fused-cable": {
    title: "Bezpiecznik nie chroni tego kabla",
    variants: {
      underrated: {
        what: "{cable} jest zasilany przez bezpiecznik {fuseA} w {fcu:loc}. Ma {csaMm2}, a tak jak leży, ma obciążalność {ratingA}.",
        why: "Bezpiecznik przepuszcza {fuseA} całymi godzinami. Kabel może się przegrzać, zanim bezpiecznik się przepali.",
        remedy:
          "Daj mniejszy bezpiecznik, który wystarczy na obciążenie, albo kabel o większym przekroju. Jeśli kabel leży w cieple, przełóż go.",
        several: {
          title: "Bezpiecznik nie chroni tych kabli",
          what: "Te kable są zasilane przez bezpiecznik {fuseA} w {fcu:loc}: {places}. Mają {csaMm2}, a tak jak leżą, mają obciążalność {ratingA}.",
        },
      },
    },
  },
  "fused-load": {
    title: "Obciążenie za duże na ten bezpiecznik",
    variants: {
      over: {
        what: "Za bezpiecznikiem {fuseA} w {place:loc} jest obciążenie {designA}.",
        why: "Bezpiecznik jest na wszystko razem. Przepaliłby się w czasie pracy.",
        remedy: "Zasil część obciążenia z innego miejsca obwodu albo z osobnego obwodu.",
        reference: "Norma: BS 1363-4, prąd znamionowy złącza z bezpiecznikiem (FCU).",
      },
      "long-running": {
        title: "Duże obciążenie bezpiecznika przez wiele godzin",
        what: "Za {place:inst} obciążenie {designA} działa przez wiele godzin.",
        why: "Złącze z bezpiecznikiem (FCU) mocno się grzeje, gdy długo płynie nim pełne {fuseA}.",
        remedy:
          "Zasil przez rozłącznik dwubiegunowy z osobnego obwodu albo powiedz, dlaczego tu tak jest dobrze.",
        reference: "Przyjęta praktyka w zawodzie. Prąd znamionowy jest z BS 1363-4.",
      },
    },
  },
  "needs-fuse": {
    title: "To wymaga własnego bezpiecznika",
    variants: {
      lighting: {
        what: "{point} jest bez bezpiecznika w obwodzie gniazd z wyłącznikiem {deviceA}.",
        why: "Oprawki, łączniki i cienki kabel potrzebują małego bezpiecznika. Powyżej {mostA} wyłącznik ich nie chroni.",
        remedy: "Zasil przez złącze FCU z bezpiecznikiem 3 A.",
      },
      appliance: {
        what: "{point} jest bez bezpiecznika w obwodzie gniazd z wyłącznikiem {deviceA}.",
        why: "Powyżej {mostA} wyłącznik nie chroni urządzenia i jego przewodu przyłączeniowego.",
        remedy: "Zasil przez złącze FCU z bezpiecznikiem, jakiego wymaga producent.",
      },
      "over-fuse": {
        title: "To wymaga osobnego obwodu",
        what: "{point} jest bez bezpiecznika w obwodzie gniazd z wyłącznikiem {deviceA}. Bierze {loadA}.",
        why: "Powyżej {mostA} wyłącznik nie chroni urządzenia. Trzeba by bezpiecznika, a w złączu jest najwyżej {mostFuseA}.",
        remedy: "Daj temu osobny obwód.",
      },
    },
  },
  "point-load": {
    title: "Dużo naraz w jednym gnieździe",
    variants: {
      single: {
        what: "Obciążenie w {point:loc} to {loadA}.",
        why: "Gniazdo pojedyncze jest na {mostA}.",
        remedy: "Podziel obciążenie na dwa gniazda albo powiedz, dlaczego tu tak jest dobrze.",
      },
      twin: {
        what: "Obciążenie w {point:loc} to {loadA}.",
        why: "Gniazdo podwójne jest razem na {mostA}, a nie na dwie pełne wtyczki.",
        remedy: "Podziel obciążenie na dwa gniazda albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },
  "accessory-rating": {
    title: "Za mały prąd znamionowy",
    variants: {
      underrated: {
        what: "{place} ma prąd znamionowy {ratingA}.",
        why: "Może tu płynąć {carriesA}. To by się przegrzało.",
        remedy: "Weź osprzęt o prądzie znamionowym {carriesA} albo większym.",
      },
    },
  },
  "volt-drop": {
    title: "Za duży spadek napięcia",
    variants: {
      lighting: {
        what: "{place}: spadek napięcia to {dropV}.",
        why: "Dla oświetlenia dopuszcza się najwyżej {limitV}. Przy większym spadku lampy świecą słabo i mogą migotać.",
        remedy: "Weź krótszą trasę albo kabel o większym przekroju.",
      },
      other: {
        what: "{place}: spadek napięcia to {dropV}.",
        why: "Dopuszcza się najwyżej {limitV}. Przy większym spadku urządzenia mogą źle działać.",
        remedy: "Weź krótszą trasę albo kabel o większym przekroju.",
      },
    },
  },
  "fault-loop": {
    title: "Zwarcie jest wyłączane za późno",
    variants: {
      never: {
        what: "{place}: impedancja pętli zwarcia to {zsOhm}. Może być najwyżej {limitOhm}.",
        why: "Gdyby faza dotknęła tam przewodu ochronnego, nic nie zadziałałoby na czas. Metal zostałby pod napięciem: niebezpieczeństwo porażenia i pożaru.",
        remedy:
          "Weź krótszą trasę, kabel o większym przekroju albo wyłącznik, który działa wcześniej. Przy własnym uziomie (TT) pomoże tylko RCD.",
      },
      "rcd-only": {
        title: "Zwarcie wyłącza na czas tylko RCD",
        what: "{place}: impedancja pętli zwarcia to {zsOhm}. Dla samego wyłącznika może być najwyżej {limitOhm}.",
        why: "Przy zwarciu RCD zadziała na czas, a sam wyłącznik nadprądowy nie.",
        remedy: "Weź krótszą trasę albo kabel o większym przekroju, albo powiedz, dlaczego RCD tu wystarczy.",
      },
      tt: {
        what: "Uziom i RCD nie pasują do siebie: {place}.",
        why: "Przy usterce na metalu mogłoby zostać ponad {limitV} i nic by nie zadziałało: niebezpieczeństwo porażenia.",
        remedy: "Daj RCD 30 mA albo popraw uziom.",
      },
      electrode: {
        title: "Uziom może nie być stały",
        what: "Rezystancja uziomu to {electrodeOhm}. Powyżej {mostOhm} może się zmieniać.",
        why: "Gdy ziemia wyschnie albo zamarznie, rezystancja może wzrosnąć.",
        remedy:
          "Tu nie trzeba nic zmieniać. W prawdziwej pracy popraw uziom albo zmierz go jeszcze raz, gdy jest sucho.",
      },
    },
  },
  "cpc-size": {
    title: "Za mały przekrój przewodu ochronnego",
    variants: {
      small: {
        what: "{cable}: przewód ochronny ma {cpcCsaMm2}. Potrzeba {leastCsaMm2}.",
        why: "Przy usterce popłynąłby prąd {faultA}. Czas do wyłączenia: {disconnectionS}. Przewód nagrzałby się tak, że zniszczyłby swoją izolację.",
        remedy:
          "Weź kabel z przewodem ochronnym o większym przekroju albo wyłącznik, który działa wcześniej.",
        several: {
          what: "Przewód ochronny ma {cpcCsaMm2} w tych kablach: {places}. Potrzeba {leastCsaMm2}.",
        },
      },
    },
  },
  rcd: {
    title: "Brak RCD 30 mA",
    variants: {
      "socket-outlets": {
        what: "{way} zasila gniazda i nie ma RCD {mostMa} ani mniejszego.",
        why: "RCD działa, gdy prąd ucieka do ziemi, na przykład przez człowieka. Gniazda do {toA} muszą mieć RCD.",
        remedy: rcdRemedy,
      },
      lighting: {
        what: "{way} zasila oświetlenie w domu i nie ma RCD {mostMa} ani mniejszego.",
        why: "RCD działa, gdy prąd ucieka do ziemi, na przykład przez człowieka. Oświetlenie w domu musi mieć RCD.",
        remedy: rcdRemedy,
      },
      bathroom: {
        what: "{way} zasila łazienkę ({points}) i nie ma RCD {mostMa} ani mniejszego.",
        why: "Przez mokrą skórę płynie więcej prądu. Każdy obwód tam musi mieć RCD.",
        remedy: rcdRemedy,
      },
      buried: {
        what: "{way} nie ma RCD {mostMa} ani mniejszego, a kabel leży płycej niż {depthMm} w ścianie: {cables}.",
        why: "Gwóźdź albo wkręt może dosięgnąć tak płytkiego kabla.",
        remedy: "Zabezpiecz to pole wyłącznikiem różnicowoprądowym (RCD) {mostMa} albo połóż kabel głębiej.",
      },
      "metal-framed": {
        what: "{way} nie ma RCD {mostMa} ani mniejszego, a kabel idzie w ścianie z metalowym szkieletem: {cables}.",
        why: "Uszkodzony kabel mógłby dać napięcie na szkielet.",
        remedy: rcdRemedy,
      },
      "socket-outlets-tt": {
        what: "{way} zasila gniazda z sieci z własnym uziomem (TT) i nie ma RCD {mostMa} ani mniejszego.",
        why: lateFault,
        remedy: rcdRemedy,
      },
      "lighting-tt": {
        what: "{way} zasila oświetlenie z sieci z własnym uziomem (TT) i nie ma RCD {mostMa} ani mniejszego.",
        why: lateFault,
        remedy: rcdRemedy,
      },
      "bathroom-tt": {
        what: "{way} zasila łazienkę ({points}) z sieci z własnym uziomem (TT) i nie ma RCD {mostMa} ani mniejszego.",
        why: "Tutaj sam wyłącznik nie wyłączy zwarcia na czas, a przez mokrą skórę płynie więcej prądu: niebezpieczeństwo porażenia.",
        remedy: rcdRemedy,
      },
      "buried-tt": {
        what: "{way} w sieci z własnym uziomem (TT) nie ma RCD {mostMa} ani mniejszego, a kabel leży płycej niż {depthMm} w ścianie: {cables}.",
        why: "Gwóźdź może dosięgnąć kabla, a sam wyłącznik nie wyłączy zwarcia na czas: niebezpieczeństwo porażenia i pożaru.",
        remedy: rcdRemedy,
      },
      "metal-framed-tt": {
        what: "{way} w sieci z własnym uziomem (TT) nie ma RCD {mostMa} ani mniejszego, a kabel idzie w ścianie z metalowym szkieletem: {cables}.",
        why: "Uszkodzony kabel mógłby dać napięcie na szkielet, a sam wyłącznik nie wyłączy tego na czas: niebezpieczeństwo porażenia.",
        remedy: rcdRemedy,
      },
    },
  },
  "floor-area": {
    title: "Duża powierzchnia podłogi",
    variants: {
      ring: {
        what: "{way} zasila gniazda na {areaM2} podłogi.",
        why: "Zalecenia dają pierścieniowi najwyżej {mostAreaM2}. Im większa powierzchnia, tym więcej działa naraz.",
        remedy: "Podziel powierzchnię na dwa obwody albo powiedz, dlaczego tu tak jest dobrze.",
      },
      radial: {
        what: "{way} zasila gniazda na {areaM2} podłogi.",
        why: "Zalecenia dają obwodowi promieniowemu z wyłącznikiem {deviceA} najwyżej {mostAreaM2}. Im większa powierzchnia, tym więcej działa naraz.",
        remedy: "Podziel powierzchnię na dwa obwody albo powiedz, dlaczego tu tak jest dobrze.",
      },
    },
  },

  // Pomiary
  "test-missing": {
    title: "Brakuje pomiaru",
    variants: {
      missing: {
        what: "{way}: nie zapisano tych pomiarów: {tests}.",
        why: "Tylko pomiar pokaże, czy dobre jest to, czego nie widać.",
        remedy: "Zrób każdy pomiar i zapisz wynik.",
      },
    },
  },
  "test-order": {
    title: "Pomiary w złej kolejności",
    variants: {
      order: {
        what: "{way}: za wcześnie zrobiono pomiar: {test}.",
        why: "Późniejszy pomiar może mylić albo być niebezpieczny, dopóki wcześniejsze nie są dobre.",
        remedy: "Zmierz jeszcze raz po kolei: ciągłość, pierścień, izolacja, biegunowość.",
      },
    },
  },
  "reading-misjudged": {
    title: "Źle oceniony wynik",
    variants: {
      passed: {
        what: "{way}: {test}. Wynik uznano za dobry, a jest zły.",
        why: "[Wynik to {readingOhm}. ][Wynik to {readingMegohm}. ]Nie tego wymaga ten pomiar.",
        remedy: "Porównaj wynik z tym, czego wymaga pomiar, znajdź przyczynę i zmierz jeszcze raz.",
      },
      failed: {
        what: "{way}: {test}. Wynik uznano za zły, a jest dobry.",
        why: "[Wynik to {readingOhm}. ][Wynik to {readingMegohm}. ]Tego wymaga ten pomiar.",
        remedy: "Porównaj jeszcze raz wynik z tym, czego wymaga pomiar.",
      },
      implausible: {
        what: "{way}: {test}. Wynik uznano za dobry, a kabel tej długości nie może go dać.",
        why: "[Wynik to {readingOhm}. ]To daleko od tego, co wynika z długości i przekroju.",
        remedy: "Przyłóż sondy we właściwych miejscach i zmierz jeszcze raz.",
      },
      misread: {
        what: "{way}: {test}. Zapisano co innego, niż pokazał miernik.",
        why: "[Zapisano {readingOhm}. ][Zapisano {readingMegohm}. ][Miernik pokazał {shownOhm}. ][Miernik pokazał {shownMegohm}. ]Zapis musi mówić, co odczytano.",
        remedy: "Zmierz jeszcze raz i zapisz to, co pokazuje miernik.",
      },
      "wrong-points": {
        what: "{way}: {test}. Sondy były w złych miejscach.",
        why: "Między innymi miejscami miernik mierzy co innego, nawet jeśli liczba wygląda dobrze.",
        remedy: "Przyłóż sondy tam, gdzie robi się ten pomiar, i zmierz jeszcze raz.",
      },
      "wrong-setting": {
        what: "{way}: {test}. Coś nie było ustawione do tego pomiaru.",
        why: "Końce przy polu, zwora, przewód pomiarowy lub napięcie nie były takie, jak trzeba w tym pomiarze.",
        remedy: "Ustaw je do tego pomiaru i zmierz jeszcze raz.",
      },
    },
  },
};
