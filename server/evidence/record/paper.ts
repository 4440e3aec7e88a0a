import type PDFKit from "pdfkit";
import type { Letters, Weight } from "./letters.ts";
import { leading, Typesetter } from "./typesetter.ts";

type Doc = InstanceType<typeof PDFKit>;
type Part = PDFKit.PDFStructureElement;

/** Sizes in points; A4 (ISO 216). */
const page = { widthPt: 595.28, heightPt: 841.89, marginPt: 42, footPt: 40 };
const bodyPt = 9.5;

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A table: its columns with their share of the width, and its cells row by row. */
export interface PaperTable {
  columns: readonly { title: string; share: number }[];
  rows: readonly (readonly string[])[];
  /** Left out: as the text around it. */
  sizePt?: number;
}

/** A row of a table in lines, as high as its highest cell. */
interface MeasuredRow {
  lines: readonly ReturnType<Typesetter["wrapped"]>[];
  heightPt: number;
  widths: readonly number[];
  sizePt: number;
  isHead: boolean;
}

/** Pages that are written from the top down: whatever is written is also told to who has it read out (PDF/UA, ISO 14289-1). */
export class Paper {
  readonly #doc: Doc;
  readonly #type: Typesetter;
  readonly #foot: (pageNumber: number) => string;
  readonly #root: Part;
  #y: number = page.marginPt;
  #pageNumber = 0;

  constructor(doc: Doc, letters: Letters, foot: (pageNumber: number) => string) {
    this.#doc = doc;
    this.#foot = foot;
    this.#type = new Typesetter(doc, letters);
    this.#root = doc.struct("Document");
    doc.addStructure(this.#root);
    this.#turn();
  }

  get widthPt(): number {
    return page.widthPt - 2 * page.marginPt;
  }

  title(text: string): void {
    this.#write("H1", text, { sizePt: 18, weight: "bold", before: 0, keepPt: 40 });
  }

  heading(text: string): void {
    this.#write("H2", text, { sizePt: 12.5, weight: "bold", before: 9, keepPt: 60 });
  }

  paragraph(text: string, weight: Weight = "regular"): void {
    this.#write("P", text, { sizePt: bodyPt, weight, before: 2, keepPt: 0 });
  }

  /** A table; a row is not parted between two pages, and its head stands above the first row on each of them. */
  table({ columns, rows, sizePt = bodyPt }: PaperTable): void {
    if (rows.length === 0) return;
    const whole = columns.reduce((sum, { share }) => sum + share, 0);
    const widths = columns.map(({ share }) => (share / whole) * this.widthPt);
    const table = this.#doc.struct("Table");
    this.#root.add(table);
    this.#y += 3;
    const rowOf = (cells: readonly string[], isHead: boolean) =>
      this.#measured(cells, { widths, sizePt, isHead });
    const head = rowOf(
      columns.map(({ title }) => title),
      true,
    );
    for (const [at, cells] of rows.entries()) {
      const row = rowOf(cells, false);
      const isTurned = this.#need(row.heightPt + (at === 0 ? head.heightPt : 0));
      if (at === 0) this.#row(table, head);
      else if (isTurned) this.#headAgain(head);
      this.#row(table, row);
    }
    table.end();
    this.#y += 3;
  }

  /** A drawing of a height, with what it shows in words. */
  figure(alt: string, heightPt: number, draw: (doc: Doc, box: Box) => void): void {
    this.#need(heightPt);
    const box = { x: page.marginPt, y: this.#y, width: this.widthPt, height: heightPt };
    const figure = this.#doc.struct("Figure", {
      alt,
      bbox: [box.x, box.y, box.x + box.width, box.y + box.height],
    } as PDFKit.Mixins.StructureElementOptions);
    this.#root.add(figure);
    figure.add(() => draw(this.#doc, box));
    figure.end();
    this.#y += heightPt + 4;
  }

  /** A short text at a point of a drawing, its middle there. */
  mark(text: string, at: { x: number; y: number }, sizePt: number, weight: Weight = "bold"): void {
    this.#type.mark(text, at, sizePt, weight);
  }

  end(): void {
    this.#root.end();
    this.#doc.end();
  }

  #measured(cells: readonly string[], how: Pick<MeasuredRow, "widths" | "sizePt" | "isHead">): MeasuredRow {
    const { widths, sizePt, isHead } = how;
    const weight = isHead ? "bold" : "regular";
    const lines = cells.map((cell, at) => this.#type.wrapped(cell, (widths[at] ?? 0) - 6, sizePt, weight));
    const heightPt = Math.max(...lines.map(({ length }) => length)) * sizePt * leading + 4;
    return { ...how, lines, heightPt };
  }

  /** The head of a table that goes on; who has it read out was told it before. */
  #headAgain({ lines, widths, sizePt, heightPt }: MeasuredRow): void {
    this.#rule(this.#y);
    this.#doc.markContent("Artifact", { type: "Pagination" });
    let x = page.marginPt;
    for (const [at, cell] of lines.entries()) {
      this.#type.lines(cell, x + 2, this.#y + 1, sizePt);
      x += widths[at] ?? 0;
    }
    this.#doc.endMarkedContent();
    this.#y += heightPt;
  }

  #row(table: Part, { lines, widths, sizePt, isHead, heightPt }: MeasuredRow): void {
    const row = this.#doc.struct("TR");
    table.add(row);
    let x = page.marginPt;
    const y = this.#y;
    this.#rule(y);
    for (const [at, cell] of lines.entries()) {
      const options = isHead ? ({ scope: "Column" } as PDFKit.Mixins.StructureElementOptions) : {};
      const part = this.#doc.struct(isHead ? "TH" : "TD", options);
      row.add(part);
      const left = x + 2;
      part.add(() => this.#type.lines(cell, left, y + 1, sizePt));
      part.end();
      x += widths[at] ?? 0;
    }
    row.end();
    this.#y += heightPt;
    this.#rule(this.#y);
  }

  /** A line across the page: it tells nothing to who has it read out. */
  #rule(y: number): void {
    const doc = this.#doc;
    doc.markContent("Artifact", { type: "Layout" });
    doc
      .lineWidth(0.4)
      .strokeColor("#7a6230")
      .moveTo(page.marginPt, y)
      .lineTo(page.widthPt - page.marginPt, y)
      .stroke();
    doc.endMarkedContent();
  }

  #write(
    kind: "H1" | "H2" | "P",
    text: string,
    { sizePt, weight, before, keepPt }: { sizePt: number; weight: Weight; before: number; keepPt: number },
  ): void {
    let left = this.#type.wrapped(text, this.widthPt, sizePt, weight);
    const linePt = sizePt * leading;
    this.#need(linePt + keepPt);
    this.#y += before;
    const part = this.#doc.struct(kind);
    this.#root.add(part);
    while (left.length > 0) {
      this.#need(linePt);
      const room = Math.max(1, Math.floor((this.#bottom - this.#y) / linePt));
      const now = left.slice(0, room);
      left = left.slice(room);
      part.add(() => this.#type.lines(now, page.marginPt, this.#y, sizePt));
      this.#y += now.length * linePt;
    }
    part.end();
  }

  get #bottom(): number {
    return page.heightPt - page.marginPt - page.footPt;
  }

  /** Turns the page where a height is not left on it; true where it did. */
  #need(heightPt: number): boolean {
    const isTurned = this.#y + heightPt > this.#bottom && this.#y > page.marginPt;
    if (isTurned) this.#turn();
    return isTurned;
  }

  #turn(): void {
    const doc = this.#doc;
    doc.addPage({ size: [page.widthPt, page.heightPt], margin: 0 });
    this.#pageNumber += 1;
    this.#y = page.marginPt;
    const sizePt = 7.5;
    doc.markContent("Artifact", { type: "Pagination" });
    const foot = this.#type.wrapped(this.#foot(this.#pageNumber), this.widthPt, sizePt, "regular");
    this.#type.lines(
      foot,
      page.marginPt,
      page.heightPt - page.marginPt - foot.length * sizePt * leading,
      sizePt,
    );
    doc.endMarkedContent();
  }
}
