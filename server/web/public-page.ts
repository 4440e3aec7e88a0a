import { type PublicSheet, publicText } from "../../shared/protocol/public-text.ts";
import { type Language, languages } from "../../shared/text/languages.ts";

const words = {
  en: { nav: "Sheets", back: "Back to the bench" },
  pl: { nav: "Karty", back: "Wróć do stanowiska" },
} as const;

const languageWords: Record<Language, string> = { en: "English", pl: "Polski" };

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const style = `
body { font: 1.1rem/1.45 "Atkinson Hyperlegible", sans-serif; max-width: 44rem; margin: 1rem auto; padding: 0 1rem;
  color: #23272b; background: #f4eee1; }
nav { display: flex; flex-wrap: wrap; gap: 0.4rem 1rem; border-bottom: 3px solid #23272b; padding-bottom: 0.5rem; }
a, summary { color: #23272b; padding: 0.5rem 0; }
a[aria-current] { font-weight: 700; background: #e9d7a8; }
h1 { font-size: 1.6rem; } h2 { font-size: 1.15rem; margin: 1.2rem 0 0.3rem; } p { margin: 0.4rem 0; }
h2, p, pre { overflow-wrap: anywhere; } pre { white-space: pre-wrap; font-size: 0.9rem; }
:focus-visible { outline: 3px solid #23272b; outline-offset: 2px; }
@media print { nav { display: none; } body { background: none; } h2 { break-after: avoid; } }
`;

/** A sheet as a page that anybody may open and print: no script, nothing from elsewhere. */
export function publicPage({ name, title, parts, all }: PublicSheet, language: Language): string {
  const said = words[language];
  const links = all.map(
    (one) =>
      `<a href="${publicText}/${one.name}?language=${language}"${one.name === name ? ` aria-current="page"` : ""}>${escaped(one.title)}</a>`,
  );
  const others = languages
    .filter((one) => one !== language)
    .map((one) => `<a lang="${one}" href="${publicText}/${name}?language=${one}">${languageWords[one]}</a>`);
  const told = parts.map(
    ({ heading, lines, fine }) =>
      `<h2>${escaped(heading)}</h2>\n${lines.map((line) => `<p>${escaped(line)}</p>`).join("\n")}${
        fine === undefined
          ? ""
          : `\n<details><summary>${escaped(fine.opener)}</summary><pre lang="en">${escaped(fine.text)}</pre></details>`
      }`,
  );
  return `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}: Spurwise</title><link rel="icon" href="data:,"><style>${style}</style></head>
<body><nav aria-label="${said.nav}">${links.join("\n")} ${others.join("\n")} <a href="/">${said.back}</a></nav>
<main><h1>${escaped(title)}</h1>
${told.join("\n")}
</main></body></html>
`;
}
