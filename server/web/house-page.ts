import { join } from "node:path";
import { publicText } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import { folders } from "../folders.ts";

/** Where the letters of the server's own pages come from, by name: the bench's own typeface, for anybody. */
export const lettersPath = `${publicText}/letters`;

const alphabets = { latin: "U+0000-00FF, U+2000-22FF", "latin-ext": "U+0100-02FF, U+1E00-1EFF" } as const;
const faces = (["latin", "latin-ext"] as const).flatMap((alphabet) =>
  ([400, 700] as const).map((weight) => ({
    name: `${alphabet}-${weight}`,
    weight,
    range: alphabets[alphabet],
  })),
);

/** The file of letters of that name, under the folder of packages; undefined where there is none. */
export const lettersFile = (name: string): string | undefined =>
  faces.some((face) => face.name === name)
    ? join("@fontsource/atkinson-hyperlegible/files", `atkinson-hyperlegible-${name}-normal.woff2`)
    : undefined;
export const lettersRoot = folders.modules;

const letters = faces.map(
  ({ name, weight, range }) =>
    `@font-face { font-family: "Atkinson Hyperlegible"; font-weight: ${weight}; font-display: swap; unicode-range: ${range};
  src: url("${lettersPath}/${name}") format("woff2"); }`,
);

const style = `${letters.join("\n")}
body { font: 1.1rem/1.45 "Atkinson Hyperlegible", sans-serif; max-width: 44rem; margin: 1rem auto; padding: 0 1rem;
  color: #23272b; background: #f4eee1; }
nav { display: flex; flex-wrap: wrap; gap: 0.4rem 1rem; border-bottom: 3px solid #23272b; padding-bottom: 0.5rem; }
a, summary { color: #23272b; padding: 0.5rem 0; }
a[aria-current] { font-weight: 700; background: #e9d7a8; }
h1 { font-size: 1.6rem; } h2 { font-size: 1.15rem; margin: 1.2rem 0 0.3rem; } p { margin: 0.4rem 0; }
h2, p, pre { overflow-wrap: anywhere; } pre { white-space: pre-wrap; font-size: 0.9rem; }
label { display: block; margin-top: 0.6rem; }
input:not([type="hidden"]) { box-sizing: border-box; width: min(22rem, 100%); }
input, button { min-height: 2.6rem; padding: 0.2rem 0.7rem; font: inherit; color: inherit; border: 2px solid #23272b;
  border-radius: 4px; background: #fffdf7; }
button { margin-top: 1rem; font-weight: 700; color: #fffdf7; background: #23272b; cursor: pointer; }
.note { padding: 0.4rem 0.8rem; border: 2px solid #23272b; background: #fffdf7; }
.serious { font-weight: 700; color: #8c1c13; } .quiet { color: #4a4f54; }
footer { margin-top: 1.5rem; border-top: 1px solid #7a6230; }
:focus-visible { outline: 3px solid #23272b; outline-offset: 2px; }
@media print { nav, form { display: none; } body { background: none; } h2 { break-after: avoid; } }
`;

/** A text as it stands in a page. */
export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/** A page that the server writes itself, in the look of the house: no script, nothing from elsewhere. */
export const housePage = (language: Language, title: string, body: string): string => `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}: Spurwise</title><link rel="icon" href="data:,"><style>${style}</style></head>
<body>${body}</body></html>
`;
