import type PDFKit from "pdfkit";
import { type Letters, type Run, runsOf, type Weight, wrappedLines } from "./letters.ts";

type Doc = InstanceType<typeof PDFKit>;

/** How far apart lines stand, in sizes of their letters. */
export const leading = 1.35;

/** Sets texts on a page, in whatever letters each piece of them is written in. Sizes in points. */
export class Typesetter {
  readonly #doc: Doc;
  readonly #letters: Letters;
  /** Widths of words at a size of one point: the same words come again and again. */
  readonly #widths = new Map<string, number>();

  constructor(doc: Doc, letters: Letters) {
    this.#doc = doc;
    this.#letters = letters;
    for (const face of [...letters.regular, ...letters.bold]) doc.registerFont(face.name, face.bytes);
  }

  /** A text in lines of a width; a word that is wider than a line is parted. */
  wrapped(text: string, widthPt: number, sizePt: number, weight: Weight): Run[][] {
    const faces = this.#letters[weight];
    const widthOf = (part: string): number => this.#widthOf(runsOf(part, faces), sizePt);
    return wrappedLines(text, widthPt, widthOf).map((line) => runsOf(line, faces));
  }

  /** Puts lines below one another from a corner on. */
  lines(lines: readonly Run[][], x: number, y: number, sizePt: number): void {
    this.#doc.fillColor("#23272b");
    for (const [at, runs] of lines.entries()) this.#put(runs, x, y + sizePt * (at * leading + 1), sizePt);
  }

  /** Puts a short text on a point, its middle there. */
  mark(text: string, { x, y }: { x: number; y: number }, sizePt: number, weight: Weight): void {
    const runs = runsOf(text, this.#letters[weight]);
    this.#put(runs, x - this.#widthOf(runs, sizePt) / 2, y + sizePt * 0.35, sizePt);
  }

  /** Puts pieces side by side on one line: they stand on it whatever letters each is in. */
  #put(runs: readonly Run[], x: number, baseline: number, sizePt: number): void {
    let left = x;
    for (const run of runs) {
      this.#doc.font(run.face.name).fontSize(sizePt);
      this.#doc.text(run.text, left, baseline, { lineBreak: false, baseline: "alphabetic" });
      left += this.#widthOf([run], sizePt);
    }
  }

  #widthOf(runs: readonly Run[], sizePt: number): number {
    return runs.reduce((sum, run) => sum + this.#onePt(run) * sizePt, 0);
  }

  #onePt({ face, text }: Run): number {
    const key = `${face.name} ${text}`;
    const known = this.#widths.get(key);
    if (known !== undefined) return known;
    const width = this.#doc.font(face.name).fontSize(1).widthOfString(text);
    this.#widths.set(key, width);
    return width;
  }
}
