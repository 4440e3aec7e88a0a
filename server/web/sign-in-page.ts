import type { Refusal } from "../../shared/protocol/reply.ts";
import type { Language } from "../../shared/text/languages.ts";

const words = {
  en: {
    title: "Sign in to this bench",
    name: "Your name",
    pin: "Your PIN",
    badge: "Or your badge code",
    enter: "Sign in",
    plain:
      "This link is not encrypted: somebody else on this network could read your PIN. Ask your technician for a certificate.",
    wrong: "That name and PIN, or that badge, do not match.",
    wait: (seconds: number) => `Too many wrong tries. Wait ${seconds} s, then try again.`,
    busy: "The bench is busy. Try again in a moment.",
  },
  pl: {
    title: "Zaloguj się do tego stanowiska",
    name: "Twoje imię i nazwisko",
    pin: "Twój PIN",
    badge: "Albo kod z identyfikatora",
    enter: "Zaloguj się",
    plain:
      "To połączenie nie jest szyfrowane: ktoś inny w tej sieci może odczytać Twój PIN. Poproś technika o certyfikat.",
    wrong: "To imię i PIN albo ten identyfikator do siebie nie pasują.",
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
  const { title, name, pin, badge, enter, plain } = words[language];
  const field = (of: string, label: string, type: string): string =>
    `<p><label>${label}<br><input name="${of}" type="${type}" maxlength="64" autocomplete="off"></label></p>`;
  return `<!doctype html>
<html lang="${language}"><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>${title}</title>
<body style="font: 1.2rem sans-serif; max-width: 30rem; margin: 2rem auto; padding: 0 1rem">
<h1>${title}</h1>
${isEncrypted ? "" : `<p role="note"><b>${plain}</b></p>`}
${refusal ? `<p role="alert"><b>${sentenceFor(refusal, language)}</b></p>` : ""}
<form method="post" action="/sign-in">
${isToDesk ? `<input type="hidden" name="to" value="desk">` : ""}
${field("name", name, "text")}${field("pin", pin, "password")}${field("badge", badge, "password")}
<p><button>${enter}</button></p>
</form></body></html>
`;
}
