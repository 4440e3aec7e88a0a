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
export type Letters = Record<Weight, readonly [Face, ...Face[]]>;

const own = (part: "latin" | "latin-ext", weight: 400 | 700): string =>
  join(
    folders.modules,
    `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${part}-${weight}-normal.woff`,
  );
const wide = (name: string): string => join(folders.modules, "dejavu-fonts-ttf/ttf", `${name}.ttf`);

function faceOf(path: string): Face {
  const bytes = readFileSync(path);
  const font = create(bytes) as Font;
  return {
    name: path,
    bytes,
    has: (character) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0),
  };
}

/**
 * Reads the letters of a document. Atkinson Hyperlegible has no ohm, no "at least" and no Cyrillic: a name or a sentence
 * with these goes on in DejaVu Sans.
 */
export const readLetters = (): Letters => ({
  regular: [faceOf(own("latin", 400)), faceOf(own("latin-ext", 400)), faceOf(wide("DejaVuSans"))],
  bold: [faceOf(own("latin", 700)), faceOf(own("latin-ext", 700)), faceOf(wide("DejaVuSans-Bold"))],
});

/** A piece of a text that one file of letters has. */
export interface Run {
  face: Face;
  text: string;
}

/** A text in as few pieces as its letters allow; what none of them has is written in the last, as an empty box. */
export function runsOf(text: string, faces: Letters[Weight]): Run[] {
  const runs: Run[] = [];
  for (const character of text) {
    const last = runs.at(-1);
    const face =
      last?.face.has(character) && character === " " ? last.face : faces.find((one) => one.has(character));
    const chosen = face ?? faces.at(-1) ?? faces[0];
    if (last?.face === chosen) last.text += character;
    else runs.push({ face: chosen, text: character });
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
