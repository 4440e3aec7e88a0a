import type { boardHealthEn } from "./board-health-en.ts";

/** The same sentences in Polish. */
export const boardHealthPl: Record<keyof typeof boardHealthEn, string> = {
  "health.tool.self-check": "Samokontrola",
  "health.tool.walk": "Obchód z sondą",
  "health.tool.lead": "Zbadaj przewód",
  "health.self.what": "Najpierw wyjmij wszystkie przewody. Każdy styk zostanie sprawdzony osobno.",
  "health.self.start": "Zacznij kontrolę",
  "health.self.again": "Sprawdź jeszcze raz",
  "health.self.cleared": "Nie ma żadnego przewodu? Wtedy łączy sama tablica. Kontrola pokaże gdzie.",
  "health.self.leads-out": "Wszystkie wyjęte",
  "health.self.staff":
    "Jeśli wszystkie przewody są wyjęte, łączy sama tablica. Instruktor lub technik: odblokuj i sprawdź jeszcze raz.",
  "health.self.sound": "Wszystko w porządku. Każdy styk odpowiada.",
  "health.self.progress": "Sprawdzone styki",
  "health.self.faults": "Usterki tablicy: {count}",
  "health.known": "Znane już przed kontrolą: {count}",
  "health.remedy": "Co zrobić",
  "health.other-ends":
    "Albo dioda na drugim końcu przewodu jest zmostkowana: {where}. Przełóż ten koniec do wolnego styku. Jeśli usterka zniknie, była tam.",

  "health.stuck-low": "Ciągle wygląda na połączony. Przewód dotyka 0 V albo wyjście jest stale włączone.",
  "health.stuck-low.remedy":
    "Instruktor: wyjmuj tam przewody po kolei. Jeśli to nie minie, technik szuka zwarcia przy tym styku, potem wymienia układ wyjścia.",
  "health.stuck-high": "Zostaje na 3,3 V. Nie czuje włożonego przewodu.",
  "health.stuck-high.remedy":
    "Instruktor: pomiń ten styk w zadaniach. Technik: poszukaj zwarcia do 3,3 V przy tym styku.",
  "health.dead-output": "Jego wyjście nie działa. Przewód czuć tylko od drugiego końca.",
  "health.dead-output.remedy":
    "Instruktor: można pracować dalej. Technik: sprawdź diodę tego styku, potem układ wyjścia.",
  "health.dead-input": "Jego wejście nie słyszy. Przewód czuć tylko na drugim końcu.",
  "health.dead-input.remedy":
    "Instruktor: można pracować dalej. Technik: sprawdź rezystor tego styku, potem układ wejścia.",
  "health.no-answer": "Wcale nie odpowiada. Nie wiadomo, co jest tam włożone.",
  "health.no-answer.remedy":
    "Instruktor: pomiń go w zadaniach. Technik: szukaj przerwanego drutu za stykiem, potem luźnego układu.",
  "health.outputs-tied": "Czyta się je jako jeden, choć nie ma między nimi przewodu.",
  "health.outputs-tied.remedy":
    "Instruktor: upewnij się, że nie ma przewodów, i sprawdź jeszcze raz. Technik: szukaj mostka z cyny lub drucika między tymi stykami.",
  "health.loose-contact": "Ciągle się zmienia. Wtyczka albo drut jest tam luźny.",
  "health.loose-contact.remedy":
    "Uczeń lub instruktor: wciśnij wtyczkę. Jeśli to nie minie, weź inny przewód. Jeśli dalej trwa, technik naprawia styk.",
  "health.open-chain":
    "Łańcuch układów wejścia jest przerwany: odpowiada {inputChipCount}, licząc od dataIn. Nic nie da się odczytać.",
  "health.open-chain.remedy":
    "Technik: wyłącz zasilanie, dociśnij taśmy między układami i poszukaj przerwy. Stanowisko samo ruszy dalej.",
  "health.wrong-length": "Tablica ma układów wejścia: {inputChipCount}; według opisu: {expectedChipCount}.",
  "health.wrong-length.remedy":
    "Technik: sprawdź, czy ustawiono właściwy opis tablicy, potem czy każda jej część jest podłączona.",
  "health.code-without-cable": "Wtyczka podaje przekrój, ale żadna żyła nie ma styku.",
  "health.code-without-cable.remedy":
    "Uczeń lub instruktor: wciśnij wtyczkę. Jeśli to nie minie, weź inny przewód; potem technik ogląda styki kodu.",
  "health.unknown-code": "Wtyczka ma kod, którego opis tablicy nie zna.",
  "health.unknown-code.remedy":
    "Instruktor: weź inny przewód. Technik: porównaj mostki we wtyczce z arkuszem etykiet.",
  "health.group-too-large": "Tyle styków jest połączonych, że odczyt jest niepewny.",
  "health.group-too-large.remedy":
    "Instruktor: wyjmuj przewody, aż zostanie kilka. Jeśli to nie minie, zawołaj technika.",
  "health.codes-differ": "Wtyczki na dwóch końcach przewodu podają różne przekroje. Przekrój jest nieznany.",
  "health.codes-differ.remedy":
    "Uczeń albo instruktor: weź inny przewód. Technik: porównaj mostki w obu wtyczkach z arkuszem etykiet.",
  "health.noisy-board": "Odczyty tej samej tablicy nie zgadzają się ze sobą. Nie wierzymy żadnemu z nich.",
  "health.noisy-board.remedy":
    "Technik: wyłącz zasilanie, dociśnij i skróć taśmy, sprawdź zasilanie i kondensator każdego układu. Stanowisko samo ruszy dalej.",
  "health.doubtful-lead": "Wyglądają na połączone, ale nikt nie włożył tam przewodu.",
  "health.doubtful-lead.remedy":
    "Uczeń lub instruktor: wyjmij ten przewód i włóż jeszcze raz. Jeśli go tam nie ma, wyjmij wszystkie; potem instruktor lub technik robi samokontrolę.",
  "health.probe-down": "Sonda leży na styku albo na drugiej sondzie.",
  "health.probe-down.remedy": "Uczeń lub instruktor: podnieś sondę i sprawdź jeszcze raz.",
  "health.no-tie": "Słowo wysłane przez łańcuch nie wraca. Przewody są nadal odczytywane.",
  "health.no-tie.remedy":
    "Technik: załóż połączenie od ostatniego 595 do pierwszego 165 (lista połączeń). Jeśli jest, łańcuch układów wyjścia jest przerwany.",
  "health.wrong-order":
    "Układom wyjścia odpowiadają nie te układy wejścia: {order}. Oba łańcuchy są całe, ale kolejność się różni.",
  "health.wrong-order.remedy":
    "Technik: wyłącz zasilanie i porównaj kolejność układów z listą połączeń: 595 numer 0 przy dataOut, 165 numer 0 najdalej od dataIn. A → H: osiem przewodów tego układu jest odwróconych.",
  "health.no-board": "Żaden styk nie odpowiada. Tablica jest odłączona albo bez zasilania.",
  "health.no-board.remedy": "Technik: sprawdź taśmę i zasilanie 3,3 V tablicy. Stanowisko samo ruszy dalej.",

  "health.walk.what": "Dotykaj sondą styków po kolei. Każdy pojawi się tu, gdy zostanie wyczuty.",
  "health.walk.simulated": "Ta tablica jest symulowana: dotknij styku, aby przyłożyć czerwoną sondę.",
  "health.walk.start": "Zacznij obchód",
  "health.walk.stop": "Zakończ obchód",
  "health.walk.left": "Zostało do dotknięcia: {count}",
  "health.walk.all": "Każdy styk został wyczuty.",
  "health.walk.touched": "Dotknięte: {count}",
  "health.walk.now": "Wyczuty: {where}",
  "health.walk.none": "Niczego jeszcze nie dotknięto.",
  "health.walk.no-probes": "Ta tablica nie ma sond.",

  "health.lead.what": "Włóż jeden przewód między dwa wejścia. Wybierz tu oba wejścia.",
  "health.lead.first": "Pierwszy koniec",
  "health.lead.second": "Drugi koniec",
  "health.lead.choose": "wybierz",
  "health.lead.test": "Zbadaj",
  "health.lead.waiting": "Trwa odczyt. Nie ruszaj przewodu.",
  "health.lead.whole": "Każda żyła łączy.",
  "health.lead.none": "Żadna żyła nie łączy.",
  "health.lead.part": "Przewód jest uszkodzony. Odłóż go do naprawy.",
  "health.lead.joined": "łączy",
  "health.lead.open": "przerwana",
  "health.lead.crossed": "idzie do: {where}",
  "health.lead.core": "żyła: {core}",
  "health.lead.code": "Odczytany kod: {code}",
  "health.lead.code-size": "Odczytany kod: {code}, czyli {size}",
  "health.lead.code-none": "Nie odczytano kodu",
  "health.lead.codes-differ": "Końce mają różne kody. Technik naprawia wtyczkę.",
  "health.pick.station": "Które miejsce?",
  "health.pick.entry": "Które wejście? {where}",
  "health.pick.contact": "Który styk? {where}",
  "health.swapped-pins": "Sygnały są na złych wyprowadzeniach: {swaps}.",
  "health.swapped-pins.remedy":
    "Technik: wyłącz zasilanie i podłącz złącze według tabeli wyprowadzeń z instrukcji budowy.",
};
