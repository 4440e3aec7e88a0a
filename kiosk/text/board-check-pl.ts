import type { boardCheckEn } from "./board-check-en.ts";

/** The same sentences in Polish. */
export const boardCheckPl: Record<keyof typeof boardCheckEn, string> = {
  "check.tool.self-check": "Samokontrola",
  "check.tool.walk": "Obchód z sondą",
  "check.tool.lead": "Zbadaj przewód",
  "check.self.what": "Najpierw wyjmij wszystkie przewody. Każdy styk zostanie sprawdzony osobno.",
  "check.self.start": "Zacznij kontrolę",
  "check.self.again": "Sprawdź jeszcze raz",
  "check.self.sound": "Wszystko w porządku. Każdy styk odpowiada.",
  "check.self.progress": "Sprawdzone styki",
  "check.self.faults": "Usterki tablicy: {count}",
  "check.known": "Znane już przed kontrolą: {count}",
  "check.where.probe": "{colour} sonda",
  "check.where.red": "Czerwona",
  "check.where.black": "Czarna",
  "check.where.more": "{where} i jeszcze {count}",
  "check.where.board": "Cała tablica",
  "check.remedy": "Co zrobić",

  "check.stuck-low": "Ciągle wygląda na połączony. Przewód dotyka 0 V albo wyjście jest stale włączone.",
  "check.stuck-low.remedy":
    "Instruktor: wyjmuj tam przewody po kolei. Jeśli to nie minie, technik szuka zwarcia przy tym styku, potem wymienia układ wyjścia.",
  "check.stuck-high": "Zostaje na 3,3 V. Nie czuje włożonego przewodu.",
  "check.stuck-high.remedy":
    "Instruktor: pomiń ten styk w zadaniach. Technik: poszukaj zwarcia do 3,3 V przy tym styku.",
  "check.dead-output": "Jego wyjście nie działa. Przewód czuć tylko od drugiego końca.",
  "check.dead-output.remedy":
    "Instruktor: można pracować dalej. Technik: sprawdź diodę tego styku, potem układ wyjścia.",
  "check.dead-input": "Jego wejście nie słyszy. Przewód czuć tylko na drugim końcu.",
  "check.dead-input.remedy":
    "Instruktor: można pracować dalej. Technik: sprawdź opornik tego styku, potem układ wejścia.",
  "check.no-answer": "Wcale nie odpowiada. Nie wiadomo, co jest tam włożone.",
  "check.no-answer.remedy":
    "Instruktor: pomiń go w zadaniach. Technik: szukaj przerwanego drutu za stykiem, potem luźnego układu.",
  "check.outputs-tied": "Czyta się je jako jeden, choć nie ma między nimi przewodu.",
  "check.outputs-tied.remedy":
    "Instruktor: upewnij się, że nie ma przewodów, i sprawdź jeszcze raz. Technik: szukaj mostka z cyny lub drucika między tymi stykami.",
  "check.loose-contact": "Ciągle się zmienia. Wtyczka albo drut jest tam luźny.",
  "check.loose-contact.remedy":
    "Uczeń lub instruktor: wciśnij wtyczkę. Jeśli to nie minie, weź inny przewód. Jeśli dalej trwa, technik naprawia styk.",
  "check.open-chain": "Sygnał nie wraca z tablicy. Nic nie da się odczytać.",
  "check.open-chain.remedy":
    "Technik: wyłącz zasilanie, dociśnij taśmy między układami i poszukaj przerwy. Stanowisko samo ruszy dalej.",
  "check.wrong-length": "Tablica ma układów wejścia: {inputChipCount}; według opisu: {expectedChipCount}.",
  "check.wrong-length.remedy":
    "Technik: sprawdź, czy ustawiono właściwy opis tablicy, potem czy każda jej część jest podłączona.",
  "check.swapped-pins": "Sygnały są na złych wyprowadzeniach: {swaps}.",
  "check.swap": "{signal} na miejscu {pin}",
  "check.signal.shiftClock": "zegar przesuwu (shiftClock)",
  "check.signal.dataOut": "dane wyjściowe (dataOut)",
  "check.signal.latch": "zatrzask (latch)",
  "check.signal.load": "wczytanie (load)",
  "check.signal.dataIn": "dane wejściowe (dataIn)",
  "check.signal.codeIn": "wejście kodów (codeIn)",
  "check.signal.outputEnable": "zezwolenie wyjść (outputEnable)",
  "check.swapped-pins.remedy":
    "Technik: wyłącz zasilanie i podłącz złącze według tabeli wyprowadzeń z instrukcji budowy.",
  "check.code-without-cable": "Wtyczka podaje przekrój, ale żadna żyła nie ma styku.",
  "check.code-without-cable.remedy":
    "Uczeń lub instruktor: wciśnij wtyczkę. Jeśli to nie minie, weź inny przewód; potem technik ogląda styki kodu.",
  "check.unknown-code": "Wtyczka ma kod, którego opis tablicy nie zna.",
  "check.unknown-code.remedy":
    "Instruktor: weź inny przewód. Technik: porównaj mostki we wtyczce z arkuszem etykiet.",
  "check.group-too-large": "Tyle styków jest połączonych, że odczyt jest niepewny.",
  "check.group-too-large.remedy":
    "Instruktor: wyjmuj przewody, aż zostanie kilka. Jeśli to nie minie, zawołaj technika.",
  "check.codes-differ": "Wtyczki na dwóch końcach przewodu podają różne przekroje. Przekrój jest nieznany.",
  "check.codes-differ.remedy":
    "Uczeń albo instruktor: weź inny przewód. Technik: sprawdź zwory w obu wtyczkach z arkuszem etykiet.",
  "check.noisy-board": "Odczyty tej samej tablicy nie zgadzają się ze sobą. Nie wierzymy żadnemu z nich.",
  "check.noisy-board.remedy":
    "Technik: wyłącz zasilanie, dociśnij i skróć taśmy, sprawdź zasilanie i kondensator każdego układu. Stanowisko samo ruszy dalej.",
  "check.no-board": "Żaden styk nie odpowiada. Tablica jest odłączona albo bez zasilania.",
  "check.no-board.remedy": "Technik: sprawdź taśmę i zasilanie 3,3 V tablicy. Stanowisko samo ruszy dalej.",

  "check.walk.what": "Dotykaj sondą styków po kolei. Każdy pojawi się tu, gdy zostanie wyczuty.",
  "check.walk.simulated": "Ta tablica jest udawana: dotknij styku, aby przyłożyć czerwoną sondę.",
  "check.walk.start": "Zacznij obchód",
  "check.walk.stop": "Zakończ obchód",
  "check.walk.left": "Zostało do dotknięcia: {count}",
  "check.walk.all": "Każdy styk został wyczuty.",
  "check.walk.touched": "Dotknięte: {count}",
  "check.walk.now": "Wyczuty: {where}",
  "check.walk.none": "Niczego jeszcze nie dotknięto.",
  "check.walk.no-probes": "Ta tablica nie ma sond.",

  "check.lead.what": "Włóż jeden przewód między dwa wejścia. Wybierz tu oba wejścia.",
  "check.lead.first": "Pierwszy koniec",
  "check.lead.second": "Drugi koniec",
  "check.lead.choose": "wybierz",
  "check.lead.test": "Zbadaj",
  "check.lead.waiting": "Trwa odczyt. Nie ruszaj przewodu.",
  "check.lead.whole": "Każda żyła łączy.",
  "check.lead.none": "Żadna żyła nie łączy.",
  "check.lead.part": "Przewód jest uszkodzony. Odłóż go do naprawy.",
  "check.lead.joined": "łączy",
  "check.lead.open": "przerwana",
  "check.lead.crossed": "idzie do: {where}",
  "check.lead.core": "żyła: {core}",
  "check.lead.code": "Odczytany kod: {code}",
  "check.lead.code-size": "Odczytany kod: {code}, czyli {size}",
  "check.lead.code-none": "Nie odczytano kodu",
  "check.lead.codes-differ": "Końce mają różne kody. Technik naprawia wtyczkę.",
  "check.pick.station": "Które miejsce?",
  "check.pick.entry": "Które wejście? {where}",
  "check.pick.contact": "Który styk? {where}",
  "refused.no-probes": "Ta tablica nie ma sond.",
};
