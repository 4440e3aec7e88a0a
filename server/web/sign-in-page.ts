import type { Refusal } from "../../shared/protocol/reply.ts";
import { publicText } from "../../shared/protocol/public-text.ts";
import { type Language, languages } from "../../shared/text/languages.ts";
import { housePage } from "./house-page.ts";
import { languageWords } from "./public-page.ts";

const words = {
  en: {
    title: "Sign in to this bench",
    name: "Your name",
    pin: "Your PIN",
    badge: "Or your badge code",
    enter: "Sign in",
    caution:
      "Training board, extra-low voltage. Real circuits can kill: isolate, prove dead. This screen is no proof of dead.",
    sheets: "Cautions and data protection",
    plain:
      "This link is not encrypted: somebody else on this network could read your PIN. Ask your technician for a certificate.",
    wrong: "Name and PIN do not match, or the badge is not known.",
    wait: (seconds: number) => `Too many wrong tries. Wait ${seconds} s, then try again.`,
    busy: "The bench is busy. Try again in a moment.",
  },
  pl: {
    title: "Zaloguj się do tego stanowiska",
    name: "Twoje imię i nazwisko",
    pin: "Twój PIN",
    badge: "Albo kod karty",
    enter: "Zaloguj się",
    caution:
      "Tablica do nauki, bardzo niskie napięcie. Prawdziwe obwody mogą zabić: wyłącz, sprawdź brak napięcia. Ten ekran nie jest dowodem.",
    sheets: "Ostrzeżenia i ochrona danych",
    plain:
      "To połączenie nie jest szyfrowane: ktoś inny w tej sieci może odczytać Twój PIN. Poproś technika o certyfikat.",
    wrong: "Imię i PIN do siebie nie pasują albo karta jest nieznana.",
    wait: (seconds: number) => `Za dużo pomyłek. Poczekaj ${seconds} s i spróbuj jeszcze raz.`,
    busy: "Stanowisko jest zajęte. Spróbuj za chwilę.",
  },
} as const;

function sentenceFor({ code, facts }: Refusal, language: Language): string {
  const { wrong, wait, busy } = words[language];
  if (code === "wait-to-try") return wait(Number(facts["seconds"]));
  return code === "too-fast" ? busy : wrong;
}

/** The page on which the staff sign in from the network. It holds nothing that was typed, and no script. */
export function signInPage(
  language: Language,
  { isEncrypted, isToDesk }: { isEncrypted: boolean; isToDesk: boolean },
  refusal?: Refusal,
): string {
  const { title, name, pin, badge, enter, plain, caution, sheets } = words[language];
  const field = (of: string, label: string, type: string): string =>
    `<label>${label}<br><input name="${of}" type="${type}" maxlength="64" autocomplete="off"></label>`;
  const others = languages
    .filter((one) => one !== language)
    .map((one) => {
      const address = `/sign-in?language=${one}${isToDesk ? "&amp;to=desk" : ""}`;
      return `<a lang="${one}" href="${address}">${languageWords[one]}</a>`;
    });
  const body = `<main>
<h1>${title}</h1>
<p>${others.join(" ")}</p>
${isEncrypted ? "" : `<p role="note" class="note">${plain}</p>`}
${refusal ? `<p role="alert" class="note serious">${sentenceFor(refusal, language)}</p>` : ""}
<form method="post" action="/sign-in">
<input type="hidden" name="language" value="${language}">
${isToDesk ? `<input type="hidden" name="to" value="desk">` : ""}
${field("name", name, "text")}${field("pin", pin, "password")}${field("badge", badge, "password")}
<button>${enter}</button>
</form></main>
<footer class="quiet"><p>${caution}</p><p><a href="${publicText}?language=${language}">${sheets}</a></p></footer>`;
  return housePage(language, title, body);
}
