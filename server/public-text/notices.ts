import { readFileSync } from "node:fs";
import { z } from "zod";
import type { PublicSheet } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import { folders } from "../folders.ts";
import { sheetTitles } from "./sheet-titles.ts";

const noticeSchema = z.strictObject({
  name: z.string(),
  version: z.string(),
  licence: z.string(),
  /** The text of the licence as the package brings it; empty where it brings none. */
  text: z.string(),
});
export type Notice = z.infer<typeof noticeSchema>;

/** What other people made that is part of this program; `npm run notices` writes the file. */
export const readNotices = (): Notice[] =>
  z.array(noticeSchema).parse(JSON.parse(readFileSync(folders.notices, "utf8")));

const words = {
  en: {
    opener: "Read the licence",
    heading: "With thanks",
    line: "This program is built with the work of others, under the licences below. What it runs on (the system, Node.js, the browser) brings its own.",
    none: "The package brings no text of its licence.",
  },
  pl: {
    opener: "Przeczytaj licencję",
    heading: "Z podziękowaniem",
    line: "Ten program powstał dzięki pracy innych, na licencjach podanych poniżej (po angielsku). To, na czym działa (system, Node.js, przeglądarka), ma własne.",
    none: "Pakiet nie zawiera tekstu licencji.",
  },
} as const;

/** The notices as a sheet, read from the disk when they are asked for. */
export function noticesSheet(language: Language): PublicSheet {
  const { opener, heading, line, none } = words[language];
  return {
    ...sheetTitles("notices", language),
    parts: [
      { heading, lines: [line] },
      ...readNotices().map(({ name, version, licence, text }) => ({
        heading: `${name} ${version}`,
        lines: text === "" ? [licence, none] : [licence],
        ...(text === "" ? {} : { fine: { opener, text } }),
      })),
    ],
  };
}
