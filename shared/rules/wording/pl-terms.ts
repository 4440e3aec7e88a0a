import type { Role } from "../../board/ids.ts";
import type { Forms, Terms } from "./catalogue.ts";

const forms = (nom: string, gen: string, acc: string, inst: string, loc: string): Forms => ({
  nom,
  gen,
  acc,
  inst,
  loc,
});
/** A word that stays as it is: a foreign one, or one that only ever stands in the nominative. */
const same = (text: string): Forms => forms(text, text, text, text, text);

/** Letters that stand at the contacts. */
const marks: Record<Role, string> = {
  L: "L",
  N: "N",
  E: "E",
  SL: "SL",
  common: "C",
  strap1: "S1",
  strap2: "S2",
};
const wire = (kind: string, kindGen: string, kindInst: string, kindLoc: string): Forms =>
  forms(
    `przewód ${kind}`,
    `przewodu ${kindGen}`,
    `przewód ${kind}`,
    `przewodem ${kindInst}`,
    `przewodzie ${kindLoc}`,
  );
const role = {
  live: forms("faza (L)", "fazy (L)", "fazę (L)", "fazą (L)", "fazie (L)"),
  neutral: wire("neutralny (N)", "neutralnego (N)", "neutralnym (N)", "neutralnym (N)"),
  earth: wire("ochronny (E)", "ochronnego (E)", "ochronnym (E)", "ochronnym (E)"),
};

/** Polish words of the trade, in the cases that sentences need. */
export const plTerms: Terms = {
  kinds: {
    way: forms("pole", "pola", "pole", "polem", "polu"),
    "socket-outlet": forms("gniazdo", "gniazda", "gniazdo", "gniazdem", "gnieździe"),
    "junction-box": forms("puszka", "puszki", "puszkę", "puszką", "puszce"),
    fcu: forms("złącze FCU", "złącza FCU", "złącze FCU", "złączem FCU", "złączu FCU"),
    "ceiling-rose": forms("rozeta", "rozety", "rozetę", "rozetą", "rozecie"),
    "plate-switch": forms("łącznik", "łącznika", "łącznik", "łącznikiem", "łączniku"),
    luminaire: forms("lampa", "lampy", "lampę", "lampą", "lampie"),
    isolator: forms("rozłącznik", "rozłącznika", "rozłącznik", "rozłącznikiem", "rozłączniku"),
    "cooker-control": forms(
      "łącznik kuchenki",
      "łącznika kuchenki",
      "łącznik kuchenki",
      "łącznikiem kuchenki",
      "łączniku kuchenki",
    ),
    appliance: forms("urządzenie", "urządzenia", "urządzenie", "urządzeniem", "urządzeniu"),
  },
  appliances: {
    cooker: forms("kuchenka", "kuchenki", "kuchenkę", "kuchenką", "kuchence"),
    hob: forms("płyta", "płyty", "płytę", "płytą", "płycie"),
    oven: forms("piekarnik", "piekarnika", "piekarnik", "piekarnikiem", "piekarniku"),
    "water-heater": forms(
      "podgrzewacz wody",
      "podgrzewacza wody",
      "podgrzewacz wody",
      "podgrzewaczem wody",
      "podgrzewaczu wody",
    ),
    boiler: forms("kocioł", "kotła", "kocioł", "kotłem", "kotle"),
    shower: forms("prysznic", "prysznica", "prysznic", "prysznicem", "prysznicu"),
    "storage-heater": forms(
      "piec akumulacyjny",
      "pieca akumulacyjnego",
      "piec akumulacyjny",
      "piecem akumulacyjnym",
      "piecu akumulacyjnym",
    ),
    "space-heater": forms("grzejnik", "grzejnika", "grzejnik", "grzejnikiem", "grzejniku"),
    "extractor-fan": forms("wentylator", "wentylatora", "wentylator", "wentylatorem", "wentylatorze"),
    other: forms("urządzenie", "urządzenia", "urządzenie", "urządzeniem", "urządzeniu"),
  },
  roles: {
    L: role.live,
    N: role.neutral,
    E: role.earth,
    SL: forms(
      "faza załączana (SL)",
      "fazy załączanej (SL)",
      "fazę załączaną (SL)",
      "fazą załączaną (SL)",
      "fazie załączanej (SL)",
    ),
    common: forms(
      "zacisk wspólny (C)",
      "zacisku wspólnego (C)",
      "zacisk wspólny (C)",
      "zaciskiem wspólnym (C)",
      "zacisku wspólnym (C)",
    ),
    strap1: forms(
      "zacisk korespondencyjny 1 (S1)",
      "zacisku korespondencyjnego 1 (S1)",
      "zacisk korespondencyjny 1 (S1)",
      "zaciskiem korespondencyjnym 1 (S1)",
      "zacisku korespondencyjnym 1 (S1)",
    ),
    strap2: forms(
      "zacisk korespondencyjny 2 (S2)",
      "zacisku korespondencyjnego 2 (S2)",
      "zacisk korespondencyjny 2 (S2)",
      "zaciskiem korespondencyjnym 2 (S2)",
      "zacisku korespondencyjnym 2 (S2)",
    ),
  },
  sides: {
    feed: forms("zasilające", "zasilającego", "zasilające", "zasilającym", "zasilającym"),
    supply: same("od zasilania"),
    load: same("od odbioru"),
    switch: same("do łącznika"),
    lamp: same("do lampy"),
    strap: same("żył korespondencyjnych"),
    "strap-in": same("pierwszych żył korespondencyjnych"),
    "strap-out": same("drugich żył korespondencyjnych"),
  },
  weights: { danger: "Niebezpieczne", fix: "Popraw", query: "Pytanie", note: "Uwaga" },
  tests: {
    "continuity-cpc": "ciągłość przewodu ochronnego",
    "ring-step-1": "próba pierścienia, krok 1",
    "ring-step-2": "próba pierścienia, krok 2",
    "ring-step-3": "próba pierścienia, krok 3",
    insulation: "rezystancja izolacji",
    polarity: "biegunowość",
  },
  fields: {
    csaMm2: "przekrój",
    cpcCsaMm2: "przekrój przewodu ochronnego",
    lengthM: "długość",
    method: "sposób ułożenia",
    ambientC: "temperatura otoczenia",
    groupedCircuits: "liczba obwodów ułożonych razem",
    insulationMm: "długość w ociepleniu",
    depthMm: "głębokość w ścianie",
    deviceRatingA: "prąd znamionowy wyłącznika",
    deviceStandard: "rodzaj wyłącznika",
    deviceCurve: "charakterystyka wyłącznika",
    rcdMa: "prąd znamionowy RCD",
    letThroughA2s: "energia przepuszczona według producenta",
    fuseRatingA: "bezpiecznik",
    switched: "czy jest w nim łącznik",
    gangs: "czy jest pojedyncze, czy podwójne",
    poles: "czy rozłącza jeden biegun, czy dwa",
    switching: "czy jest zwykły, czy schodowy",
    ratingA: "prąd znamionowy",
    appliance: "rodzaj urządzenia",
    powerW: "moc",
    loads: "moc",
    litres: "pojemność w litrach",
    makersFuseA: "największy bezpiecznik według producenta",
    distanceToApplianceM: "odległość od urządzenia",
    floorAreaM2: "powierzchnia podłogi",
    maximumZsOhm: "największa dopuszczalna impedancja pętli zwarcia (Zs)",
    zeOhm: "zewnętrzna część pętli zwarcia (Ze)",
    electrodeOhm: "rezystancja uziomu",
    earthing: "układ sieci",
    readings: "wyniki pomiarów",
    judged: "czy wynik uznano za dobry, czy za zły",
  },
  values: {
    ring: forms("pierścień", "pierścienia", "pierścień", "pierścieniem", "pierścieniu"),
    radial: forms(
      "obwód promieniowy",
      "obwodu promieniowego",
      "obwód promieniowy",
      "obwodem promieniowym",
      "obwodzie promieniowym",
    ),
    "continuity-cpc": same("ciągłość przewodu ochronnego"),
    "ring-step-1": same("próba pierścienia, krok 1"),
    "ring-step-2": same("próba pierścienia, krok 2"),
    "ring-step-3": same("próba pierścienia, krok 3"),
    insulation: same("rezystancja izolacji"),
    polarity: same("biegunowość"),
    live: role.live,
    neutral: role.neutral,
    earth: role.earth,
    pass: same("dobrze"),
    fail: same("źle"),
  },
  decimalMark: ",",
  and: "i",
  or: "albo",
  yes: "tak",
  no: "nie",
  bare: (kind) => kind,
  cable: (a, b) => ofHead(forms("kabel", "kabla", "kabel", "kablem", "kablu"), `od ${a.gen} do ${b.gen}`),
  conductor: (role, a, b) =>
    ofHead(
      forms("przewód", "przewodu", "przewód", "przewodem", "przewodzie"),
      `${marks[role]} od ${a.gen} do ${b.gen}`,
    ),
  lead: (a, b) =>
    ofHead(
      forms("przewód", "przewodu", "przewód", "przewodem", "przewodzie"),
      `między ${a.inst} a ${b.inst}`,
    ),
  entry: (letter, side, station) => {
    const at = `w ${station.loc}`;
    return forms(
      `wejście ${letter} ${side.nom} ${at}`,
      `wejścia ${letter} ${side.gen} ${at}`,
      `wejście ${letter} ${side.acc} ${at}`,
      `wejściem ${letter} ${side.inst} ${at}`,
      `wejściu ${letter} ${side.loc} ${at}`,
    );
  },
  contact: (role, letter, station) =>
    ofHead(
      forms("styk", "styku", "styk", "stykiem", "styku"),
      `${marks[role]} przy wejściu ${letter} w ${station.loc}`,
    ),
  front: (role, station) =>
    ofHead(forms("styk", "styku", "styk", "stykiem", "styku"), `${marks[role]} na przodzie ${station.gen}`),
  where: "Zobacz: {places}.",
  range: (least, most) => `od ${least} do ${most}`,
  more: (count) => `jeszcze ${count}`,
  clauseWords: [
    ["On-Site Guide Appendix", "On-Site Guide, załącznik"],
    ["limits of the dead tests", "granice prób bez napięcia"],
    ["rating usual on the accessory", "prąd znamionowy podawany na osprzęcie"],
    ["cooker circuits", "obwody kuchenek"],
    ["Appendix", "załącznik"],
    ["section", "punkt"],
    ["Table", "tablica"],
    ["formerly", "dawniej"],
    [" and ", " i "],
    [" to ", " do "],
  ],
  references: {
    regulation: "Przepis: {document}, {clause}.",
    standard: "Norma: {document}, {clause}.",
    guidance: "Zalecenie, nie przepis: {document}, {clause}.",
    practice: "Przyjęta praktyka w zawodzie.",
  },
  requirements: {
    served: "Prąd dochodzi do: {stations:gen}.",
    "one-circuit": "Wszystko w jednym obwodzie[, z {way:gen}]: {stations}.",
    ring: "Obwód, w którym jest {of}, to pierścień.",
    radial: "Obwód, w którym jest {of}, jest promieniowy.",
    "in-ring": "W samym pierścieniu, nie na odgałęzieniu: {stations}.",
    "unfused-spur": "Osobne odgałęzienie bez bezpiecznika: {stations}.",
    "through-one-fcu": "Zasilanie przez {fcu:acc}: {stations}.",
    "through-any-fcu": "Zasilanie przez złącze z bezpiecznikiem (FCU): {stations}.",
    "own-switch": "Da się wyłączyć[ przez {by:acc}] tak, że nic innego nie gaśnie: {stations}.",
    fuse: "Bezpiecznik {mostA} albo mniejszy przed {stations:inst}.",
    sized:
      "Wyłącznik w {way:loc} wystarcza na obciążenie, a każdy kabel pasuje do wyłącznika albo bezpiecznika przed nim.",
    thrift: "Żaden nowy kabel nie ma większego przekroju, niż trzeba.",
    "thrift-but-one": "Żaden nowy kabel nie ma przekroju większego, niż trzeba, o więcej niż jeden stopień.",
    kept: "Zostaje tak, jak było: {cables}.",
    device: "W {way:loc} jest wyłącznik {ratings}.",
    readings: "Zapisane pomiary dla {way:gen}: {tests}.",
    "fault-named": "Usterki znalezione i nazwane: razem {faultCount}.",
  },
  undetermined: {
    value:
      "Jeszcze nie wiadomo: {title}. Nieznane dane: {field}. Miejsce: {place}. Podaj je i sprawdź jeszcze raz.",
    board:
      "Nie wiadomo: {title}. Tablica nie odczytuje miejsca: {place}. To nie twój błąd. Powiedz instruktorowi.",
    noLimit:
      "Jeszcze nie wiadomo: {title}. Żadna tabela nie podaje największej impedancji pętli zwarcia (Zs) dla bezpiecznika o tym prądzie. Miejsce: {place}. Wybierz prąd z tabeli, {ratings}, albo wyłącznik nadprądowy.",
    noLimitTt:
      "Jeszcze nie wiadomo: {title}. Przy uziomie żadna tabela nie podaje największej impedancji pętli zwarcia (Zs) dla bezpiecznika. Miejsce: {place}. Wybierz aparat z RCD: wtedy zwarcie wyłączy RCD.",
    otherField: "jedna z wartości",
  },
};

function ofHead(head: Forms, rest: string): Forms {
  return forms(
    `${head.nom} ${rest}`,
    `${head.gen} ${rest}`,
    `${head.acc} ${rest}`,
    `${head.inst} ${rest}`,
    `${head.loc} ${rest}`,
  );
}
