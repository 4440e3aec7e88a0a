import { create, type Font } from "fontkit";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { folders } from "../../folders.ts";

/** One file of letters: its name in a document, and whether it has a character. */
export interface Face {
  name: string;
  bytes: Buffer;
  has: (character: string) => boolean;
}

/** What a text is written in: the project's own letters first, then those that have what it has not. */
export type Weight = "regular" | "bold";
export type Letters = Record<Weight, readonly Face[]>;

/** A part of a typeface, by the alphabet and the weight. */
const part = (typeface: "atkinson-hyperlegible" | "noto-sans", alphabet: string, weight: 400 | 700): string =>
  join(folders.modules, `@fontsource/${typeface}/files/${typeface}-${alphabet}-${weight}-normal.woff`);

function faceOf(path: string): Face {
  const bytes = readFileSync(path);
  const font = create(bytes) as Font;
  return {
    name: path,
    bytes,
    has: (character) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0),
  };
}

const own = ["latin", "latin-ext"] as const;
const others = ["greek", "cyrillic", "cyrillic-ext", "vietnamese"] as const;

const facesOf = (weight: 400 | 700): Face[] => [
  ...own.map((alphabet) => faceOf(part("atkinson-hyperlegible", alphabet, weight))),
  ...others.map((alphabet) => faceOf(part("noto-sans", alphabet, weight))),
];

/**
 * Reads the letters of a document. Atkinson Hyperlegible has no ohm, no Greek and no Cyrillic: a name or a sentence with
 * these goes on in Noto Sans.
 */
export const readLetters = (): Letters => ({ regular: facesOf(400), bold: facesOf(700) });

/** A piece of a text that one file of letters has. */
export interface Run {
  face: Face;
  text: string;
}

/** What stands for a character that no letters have. */
const noLetter = "?";

/** A text in as few pieces as its letters allow. */
export function runsOf(text: string, faces: Letters[Weight]): Run[] {
  const runs: Run[] = [];
  for (const character of text) {
    const last = runs.at(-1);
    const isGap = character === " " && last?.face.has(character);
    const face = isGap ? last?.face : faces.find((one) => one.has(character));
    const [first] = faces;
    const chosen = face ?? first;
    const shown = face ? character : noLetter;
    if (last && last.face === chosen) last.text += shown;
    else if (chosen) runs.push({ face: chosen, text: shown });
  }
  return runs;
}

/** A word in parts that are each no wider than a line. */
function partsOf(word: string, widthPt: number, widthOf: (text: string) => number): string[] {
  if (widthOf(word) <= widthPt) return [word];
  const parts: string[] = [];
  let part = "";
  for (const character of word) {
    if (part !== "" && widthOf(part + character) > widthPt) {
      parts.push(part);
      part = "";
    }
    part += character;
  }
  return [...parts, part];
}

/** A text in lines of a width; a word that is wider than a line is parted. */
export function wrappedLines(text: string, widthPt: number, widthOf: (text: string) => number): string[] {
  const spacePt = widthOf(" ");
  return text.split("\n").flatMap((paragraph) => {
    const made: string[] = [];
    let [line, linePt] = ["", 0];
    for (const part of paragraph.split(" ").flatMap((word) => partsOf(word, widthPt, widthOf))) {
      const partPt = widthOf(part);
      if (line !== "" && linePt + spacePt + partPt > widthPt) {
        made.push(line);
        line = "";
      }
      [line, linePt] = line === "" ? [part, partPt] : [`${line} ${part}`, linePt + spacePt + partPt];
    }
    return [...made, line];
  });
}
