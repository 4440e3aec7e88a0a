import { type PublicSheet, publicText } from "../../shared/protocol/public-text.ts";
import { type Language, languages } from "../../shared/text/languages.ts";
import { escaped, housePage } from "./house-page.ts";

const words = {
  en: { nav: "Sheets", back: "Back to the bench" },
  pl: { nav: "Karty", back: "Wróć do stanowiska" },
} as const;

/** Each language by its own name. */
export const languageWords: Record<Language, string> = { en: "English", pl: "Polski" };

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
  const body = `<nav aria-label="${said.nav}">${links.join("\n")} ${others.join("\n")} <a href="/">${said.back}</a></nav>
<main><h1>${escaped(title)}</h1>
${told.join("\n")}
</main>`;
  return housePage(language, title, body);
}
