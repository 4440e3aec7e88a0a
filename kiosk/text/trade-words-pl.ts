import type { tradeWordsEn } from "./trade-words-en.ts";

/** Words of the trade and what they mean, told on a tap, in Polish. */
export const tradeWordsPl: Record<keyof typeof tradeWordsEn, string> = {
  "word.ring-test": "próba pierścienia",
  "word.ring-test.means":
    "Trzy pomiary, które pokazują, że pierścień jest cały: każda żyła od końca do końca, potem L na krzyż z N, potem L na krzyż z E.",
  "word.ring": "pierścień",
  "word.ring.means":
    "Obwód końcowy, który wychodzi z pola, idzie przez wszystkie punkty i wraca do tego samego pola.",
  "word.radial": "obwód promieniowy",
  "word.radial.means": "Obwód końcowy, który wychodzi z pola i kończy się na ostatnim punkcie.",
  "word.circuit": "obwód",
  "word.circuit.means": "Wszystko, co zasila jedno pole, od jego wyłącznika do ostatniego punktu.",
  "word.spur": "odgałęzienie",
  "word.spur.means": "Jeden kabel od miejsca w obwodzie do jednego dalszego punktu. Nie wraca.",
  "word.leg": "ramię",
  "word.leg.means": "Jeden z kabli, które wychodzą z pola. Pierścień ma dwa ramiona i dzielą one prąd.",
  "word.point": "punkt",
  "word.point.means": "Miejsce, które bierze prąd: gniazdo, FCU, urządzenie albo lampa.",
  "word.way": "pole",
  "word.way.means": "Miejsce w rozdzielnicy z własnym wyłącznikiem. Tam zaczyna się jeden obwód.",
  "word.consumer-unit": "rozdzielnica",
  "word.consumer-unit.means":
    "Skrzynka, do której wchodzi zasilanie: rozłącznik główny i pole z wyłącznikiem dla każdego obwodu.",
  "word.device": "wyłącznik",
  "word.device.means":
    "Wyłącznik nadprądowy w polu, w starych domach bezpiecznik. Chroni kabel przed zbyt dużym prądem.",
  "word.device-type": "charakterystyka",
  "word.device-type.means":
    "Jak szybko wyłącznik wyłącza zwarcie: od razu od 5-krotności (B), 10-krotności (C) albo 20-krotności (D) prądu znamionowego.",
  "word.rewirable": "bezpiecznik z drutem",
  "word.rewirable.means":
    "Stary rodzaj bezpiecznika (BS 3036): drut, który się wymienia. Działa późno, więc obciążalność kabla za nim liczy się za mniej.",
  "word.fcu": "FCU",
  "word.fcu.means":
    "Złącze z bezpiecznikiem. Bezpiecznik, najwyżej 13 A, jest na wszystko, co zasila, razem.",
  "word.fuse": "bezpiecznik",
  "word.fuse.means": "Część, która się topi, gdy płynie za duży prąd, i tak go przerywa.",
  "word.rcd": "RCD",
  "word.rcd.means":
    "Wyłącznik różnicowoprądowy. Działa, gdy prąd ucieka do ziemi. Uzupełnia przewód ochronny, nie zastępuje go.",
  "word.trip": "zadziałać",
  "word.trip.means": "Wyłączyć samo, bo prąd jest za duży albo ucieka do ziemi.",
  "word.rating": "prąd znamionowy",
  "word.rating.means": "Prąd, na jaki zrobiono daną część na stałe, na przykład 20 A.",
  "word.load": "obciążenie",
  "word.load.means": "To, co bierze prąd, albo prąd, który bierze.",
  "word.overload": "przeciążenie",
  "word.overload.means": "Prąd większy, niż kabel lub wyłącznik może długo przenosić.",
  "word.short": "zwarcie",
  "word.short.means": "Faza łączy się wprost z przewodem neutralnym albo ochronnym. Płynie ogromny prąd.",
  "word.fault-current": "prąd zwarcia",
  "word.fault-current.means": "Prąd, który płynie przy zwarciu. Wyłącznik musi umieć go przerwać.",
  "word.let-through": "energia przepuszczona",
  "word.let-through.means":
    "To, co wyłącznik jeszcze wpuszcza w kabel, zanim przerwie zwarcie. Podaje ją producent.",
  "word.Zs": "Zs",
  "word.Zs.means":
    "Impedancja drogi, którą płynie prąd zwarcia do ziemi i z powrotem. Im mniejsza, tym szybciej zadziała wyłącznik.",
  "word.Ze": "Ze",
  "word.Ze.means": "Ta część pętli zwarcia, która leży poza domem.",
  "word.earth-electrode": "uziom",
  "word.earth-electrode.means": "Metalowy pręt w ziemi: uziemienie domu, który nie dostaje go z siecią.",
  "word.TT": "TT",
  "word.TT.means":
    "Sieć bez własnego przewodu ochronnego: dom ma uziom. Prąd zwarcia jest tak mały, że potrzebny jest RCD.",
  "word.earthing": "układ sieci",
  "word.earthing.means": "Skąd dom ma uziemienie: z siecią (TN) albo z własnego uziomu (TT).",
  "word.junction-box": "puszka",
  "word.junction-box.means": "Pudełko, w którym łączy się kable. Samo nie bierze prądu.",
  "word.isolate": "odłączyć",
  "word.isolate.means": "Wyłączyć całe zasilanie i zabezpieczyć kłódką, żeby nikt go nie załączył.",
  "word.isolator": "rozłącznik",
  "word.isolator.means":
    "Łącznik, który przerywa fazę i przewód neutralny (dwubiegunowy), żeby można było pracować za nim.",
  "word.pole": "biegun",
  "word.pole.means":
    "Przewód, który łącznik przerywa: jednobiegunowy tylko fazę, dwubiegunowy fazę i przewód neutralny.",
  "word.cooker-control": "łącznik kuchenki",
  "word.cooker-control.means":
    "Łącznik dwubiegunowy dla kuchenki, najwyżej 2 m od niej. Niektóre mają też gniazdo.",
  "word.allowance": "współczynnik dla kuchenek",
  "word.allowance.means":
    "Kuchenka nie grzeje cała naraz. W jej obwodzie liczy się pierwsze 10 A w całości i 30 % reszty.",
  "word.sides": "strona zasilania, strona odbioru",
  "word.sides.means":
    "Złącze albo rozłącznik ma dwie strony: zasilania, od pola, i odbioru, do tego, co zasila.",
  "word.Ib": "Ib",
  "word.Ib.means": "Prąd obliczeniowy: tyle biorą odbiorniki.",
  "word.In": "In",
  "word.In.means": "Prąd znamionowy wyłącznika lub bezpiecznika.",
  "word.Iz": "Iz",
  "word.Iz.means":
    "Obciążalność prądowa długotrwała: tyle kabel może przenosić tam, gdzie leży, latami i bez szkody.",
  "word.It": "It",
  "word.It.means": "Prąd, jaki musi dla kabla podawać tabela. Ciepło, ocieplenie i kable obok go zwiększają.",
  "word.factors": "Ca, Cg, Ci",
  "word.factors.means":
    "Liczby, które zwiększają It: Ca, gdy otoczenie jest ciepłe, Cg dla kabli obok siebie, Ci w ociepleniu.",
  "word.method": "metoda",
  "word.method.means":
    "Sposób ułożenia kabla, według liter i liczb z BS 7671. Ten sam kabel przy jednym może przenosić więcej niż przy innym.",
  "word.conduit": "rurka",
  "word.conduit.means": "Rurka, w którą wciąga się kable.",
  "word.size": "przekrój",
  "word.size.means": "Pole powierzchni miedzi w żyle, w mm². Im większe, tym większy prąd wolno przenosić.",
  "word.insulation-resistance": "rezystancja izolacji",
  "word.insulation-resistance.means":
    "Jak dobrze osłony żył oddzielają je od siebie. Mierzy się ją napięciem 500 V i ma mieć co najmniej 1 MΩ.",
  "word.resistance": "rezystancja",
  "word.resistance.means": "Jak mocno droga hamuje prąd, w omach (Ω).",
  "word.insulation": "ocieplenie",
  "word.insulation.means":
    "To, co zatrzymuje ciepło w ścianie albo dachu. Kabel pod nim bardziej się grzeje, więc może przenosić mniej.",
  "word.volt-drop": "spadek napięcia",
  "word.volt-drop.means":
    "Wolty, które giną w kablu na drodze do punktu. Najwyżej 3 % dla oświetlenia i 5 % dla reszty.",
  "word.switched-line": "faza załączana",
  "word.switched-line.means":
    "Faza za łącznikiem. Jest pod napięciem tylko wtedy, gdy łącznik jest włączony. Żyłę innej barwy oznacza się na brązowo.",
  "word.line": "faza",
  "word.line.means": "Brązowy przewód fazowy (liniowy). Przynosi prąd i jest pod napięciem.",
  "word.neutral": "przewód neutralny",
  "word.neutral.means": "Niebieski przewód. Prąd nim wraca. Też jest przewodem czynnym, jak faza.",
  "word.earth": "przewód ochronny",
  "word.earth.means": "Zielono-żółty przewód. Chroni ludzi, gdy coś się zepsuje.",
  "word.common": "zacisk wspólny",
  "word.common.means":
    "Zacisk łącznika schodowego, który łączy się z jedną albo z drugą żyłą korespondencyjną.",
  "word.strapper": "żyła korespondencyjna",
  "word.strapper.means":
    "Jedna z dwóch żył, które łączą łączniki schodowe. Zawsze co najmniej jedna z nich jest pod napięciem.",
  "word.two-way": "łącznik schodowy",
  "word.two-way.means":
    "Łącznik, który łączy zacisk wspólny z jedną albo drugą żyłą korespondencyjną. Dwa takie sterują jedną lampą.",
  "word.intermediate": "łącznik krzyżowy",
  "word.intermediate.means":
    "Łącznik w żyłach korespondencyjnych między dwoma schodowymi. Zamienia je miejscami, więc też steruje lampą.",
  "word.core": "żyła",
  "word.core.means": "Jeden przewód w kablu. Jej barwa mówi, do czego służy.",
  "word.sleeving": "oznaczenie żyły",
  "word.sleeving.means": "Barwna rurka na żyle, która mówi, czym ta żyła jest.",
  "word.terminal": "zacisk",
  "word.terminal.means": "Miejsce w osprzęcie, gdzie trzyma się żyłę, najczęściej śrubą.",
  "word.accessory": "osprzęt",
  "word.accessory.means": "Część na końcu kabla: gniazdo, łącznik, rozeta, FCU.",
  "word.rose": "rozeta",
  "word.rose.means": "Osprzęt na suficie, na którym wisi lampa. W jej zaciskach łączą się kable oświetlenia.",
  "word.lampholder": "oprawka",
  "word.lampholder.means": "Część, w którą wkłada się albo wkręca żarówkę.",
  "word.flex": "przewód przyłączeniowy",
  "word.flex.means": "Giętki przewód między wtyczką albo FCU a urządzeniem.",
  "word.live": "pod napięciem",
  "word.live.means": "Połączone z zasilaniem: kto tego dotknie, może zginąć.",
  "word.dead-test": "próby bez napięcia",
  "word.dead-test.means": "Próby przed włączeniem obwodu: ciągłość, pierścień, izolacja, biegunowość.",
  "word.dead": "brak napięcia",
  "word.dead.means":
    "Odcięcie od zasilania. Liczy się dopiero, gdy pokaże je wskaźnik, który sam był sprawdzony.",
  "word.continuity": "ciągłość",
  "word.continuity.means":
    "To, że żyła łączy na całej długości, bez przerwy. Mierzy się ją w omach, bez napięcia.",
  "word.R1-R2": "R1 + R2",
  "word.R1-R2.means":
    "R1 to rezystancja fazy, R2 przewodu ochronnego, od pola do punktu. Razem pokazują, że przewód ochronny tam dochodzi.",
  "word.polarity": "biegunowość",
  "word.polarity.means":
    "Każdy przewód na swoim zacisku, a łącznik jednobiegunowy i bezpiecznik w fazie. To się mierzy.",
  "word.null": "zerowanie",
  "word.null.means": "Odjęcie rezystancji przewodów pomiarowych od wyniku: końce razem, potem Zeruj.",
  "word.extra-low": "bardzo niskie napięcie",
  "word.extra-low.means": "Najwyżej 50 V. Ta tablica ma o wiele mniej; w domu jest 230 V.",
  "word.competent": "uprawnienia",
  "word.competent.means": "Potwierdzenie, że ktoś umie bezpiecznie wykonać taką pracę i wolno mu to robić.",
};
