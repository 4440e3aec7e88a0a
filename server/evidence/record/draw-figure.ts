import type PDFKit from "pdfkit";
import type { Core } from "../../../shared/board/station-kinds.ts";
import type { Box, Paper } from "./paper.ts";
import type { RecordWords } from "./record-words.ts";
import { cableMark, type DrawnCore, platePt, type WiringDrawing } from "./wiring-drawing.ts";

type Doc = InstanceType<typeof PDFKit>;
type Point = DrawnCore["line"][number];

/** The colours of the bench's own plan; a core is told apart by its dashes as well. */
const ink = "#23272b";
const ground = "#fffdf7";
const sheath = "#c9c4b6";
const styles: Record<Core, { colour: string; ground: string; dashes: readonly number[] }> = {
  brown: { colour: "#6b3f1d", ground: "#6b3f1d", dashes: [] },
  blue: { colour: "#1d5fa8", ground, dashes: [4.5, 1.6] },
  earth: { colour: "#1f6b38", ground: "#f0c419", dashes: [1.5, 1.5] },
  black: { colour: "#1b1b1b", ground, dashes: [7, 1.5, 1.5, 1.5] },
  grey: { colour: "#6d7277", ground, dashes: [0.8, 1.2] },
};
const corePt = 1.7;

function trace(doc: Doc, line: readonly Point[]): Doc {
  line.forEach(({ x, y }, at) => (at === 0 ? doc.moveTo(x, y) : doc.lineTo(x, y)));
  return doc;
}

const stroke = (doc: Doc, line: readonly Point[], widthPt: number, colour: string): void =>
  void trace(doc.lineWidth(widthPt).undash().strokeColor(colour), line).stroke();

function drawCore(doc: Doc, { core, line, isMissing, isCrossed }: DrawnCore): void {
  if (isMissing) return;
  const { colour, ground: under, dashes } = styles[core];
  stroke(doc, line, corePt, under);
  const widthPt = corePt;
  doc.lineWidth(widthPt).strokeColor(colour);
  // What pdfkit can dash with: at least one step, each more than nothing.
  if (dashes.length > 0) doc.dash(dashes[0] ?? 1, { space: dashes[1] ?? 1 });
  trace(doc, line).stroke();
  doc.undash();
  if (isCrossed)
    for (const { x, y } of line.slice(0, 1)) {
      stroke(
        doc,
        [
          { x: x - 4, y: y - 4 },
          { x: x + 4, y: y + 4 },
        ],
        1,
        ink,
      );
      stroke(
        doc,
        [
          { x: x - 4, y: y + 4 },
          { x: x + 4, y: y - 4 },
        ],
        1,
        ink,
      );
    }
}

/** Draws a plan into a box of the paper: rooms, walls, cables core by core, plates and numbers on top. */
export function drawFigure(
  paper: Paper,
  doc: Doc,
  drawing: WiringDrawing,
  box: Box,
  words: RecordWords,
): void {
  const at = ({ x, y }: Point): Point => ({ x: box.x + x, y: box.y + y });
  const lineAt = (line: readonly Point[]): Point[] => line.map(at);
  doc.lineCap("round").lineJoin("round");
  for (const { a, b } of drawing.walls) stroke(doc, lineAt([a, b]), 2.5, "#e9d7a8");
  for (const room of drawing.rooms) {
    const { x, y } = at(room);
    doc.lineWidth(0.5).strokeColor("#7a6230").rect(x, y, room.width, room.height).stroke();
    doc.fillColor("#4a4f54");
    paper.mark(room.name[words.language], { x: x + room.width / 2, y: y + room.height / 2 }, 8, "regular");
  }
  doc.lineCap("butt");
  for (const { line, sheathPt, cores } of drawing.cables) {
    stroke(doc, lineAt(line), sheathPt + 1, ink);
    stroke(doc, lineAt(line), sheathPt, sheath);
    for (const core of cores) drawCore(doc, { ...core, line: lineAt(core.line) });
  }
  for (const { at: place, number } of drawing.plates) {
    const { x, y } = at(place);
    doc.lineWidth(1).fillColor(ground).strokeColor(ink);
    doc.rect(x - platePt / 2, y - platePt / 2, platePt, platePt).fillAndStroke();
    doc.fillColor(ink);
    paper.mark(String(number), { x, y }, 9);
  }
  for (const { label, number, cores } of drawing.cables) {
    const { x, y } = at(label);
    doc.lineWidth(0.6).fillColor(ground).strokeColor(ink).circle(x, y, 6).fillAndStroke();
    doc.fillColor(ink);
    paper.mark(cableMark(number), { x, y }, 7.5);
    const missing = cores.flatMap(({ role, isMissing }) =>
      isMissing ? [words.t("cores.missing", { core: role })] : [],
    );
    if (missing.length > 0) paper.mark(missing.join(", "), { x, y: y + 14 }, 8);
  }
}
