import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf } from "./board-wiring.ts";
import { inputChip, letterOf, outputChip } from "./chip-pins.ts";
import { box, dot, line, page, type Point, text } from "./svg.ts";

/** Holes of a stripboard stand so far apart; drawn at three times their size. */
const pitchMm = 2.54 * 3;
const edgeMm = 12;
const topMm = 34;
const hole = (column: number, row: number): Point => [edgeMm + column * pitchMm, topMm + row * pitchMm];

const small = { columns: 38, rows: 20 } as const;
const rowsOfBoards = { count: 14, wideMm: 18, highMm: 14 } as const;
const bus = ["3.3 V", "0 V", "shiftClock", "latch", "load", "outputEnable"];

/**
 * Where each part sits: one small board of eight lines, hole by hole, and how the small boards stand along their run.
 * A direct board has none of it: its three resistors a line stand beside one another.
 */
export function layout(board: BoardDescription): string | undefined {
  if (board.wiring.kind === "direct") return undefined;
  const widthMm = edgeMm * 2 + small.columns * pitchMm;
  const runTopMm = topMm + small.rows * pitchMm + 26;
  const run = alongTheRun(board, runTopMm);
  return page(widthMm, run.endMm + 10, `${board.name}: layout`, [
    text(edgeMm, 14, `${board.name}: where each part sits`, { sizeMm: 6 }),
    text(
      edgeMm,
      21,
      "One board of eight lines from the side of the parts, three times its size; a dot is a hole with a leg in it.",
    ),
    text(edgeMm, 26, "Cut the strips under each chip between its two rows of pins."),
    box(...hole(0, 0), small.columns * pitchMm, small.rows * pitchMm),
    ...header(1, 4, bus, "start"),
    ...header(small.columns - 1, 4, bus, "end"),
    ...header(1, 12, ["595 serial in", "165 serial in"], "start"),
    ...header(small.columns - 1, 12, ["595 serial out", "165 serial out"], "end"),
    ...chip(8, outputName, outputChip.name),
    ...chip(22, inputName, inputChip.name),
    ...standing(8, "diode", "Schottky diodes, band (cathode) up, to the 595"),
    ...standing(22, "resistor", "pull-ups, lower leg to 3.3 V"),
    ...lineHeader(),
    ...electrolytic(),
    ...run.drawn,
  ]);
}

/** Names of pins 1 to 16. */
const outputName = nameOf([
  ...outputChip.outputPins.map((pin, bit): [number, string] => [pin, `Q${letterOf(bit)}`]),
  [outputChip.serialIn, "SER"],
  [outputChip.serialOut, "QH'"],
  [outputChip.shiftClock, "SRCLK"],
  [outputChip.latch, "RCLK"],
  [outputChip.outputEnable, "OE"],
  [outputChip.clear, "CLR"],
  [outputChip.supply, "3.3 V"],
  [outputChip.zeroVolts, "0 V"],
]);
const inputName = nameOf([
  ...inputChip.inputPins.map((pin, bit): [number, string] => [pin, letterOf(bit)]),
  [inputChip.serialIn, "SER"],
  [inputChip.serialOut, "QH"],
  [inputChip.shiftClock, "CLK"],
  [inputChip.clockInhibit, "INH"],
  [inputChip.load, "SH/LD"],
  [inputChip.supply, "3.3 V"],
  [inputChip.zeroVolts, "0 V"],
  [7, "open"],
]);

function nameOf(pins: readonly [number, string][]): (pin: number) => string {
  const names = new Map(pins);
  return (pin) => names.get(pin) ?? "?";
}

/** A 16-pin package, notch to the left: pin 1 below the notch, 16 above it. */
function chip(column: number, pinName: (pin: number) => string, name: string): string[] {
  const [topRow, lowRow] = [4, 7];
  const [xMm, yMm] = hole(column, topRow);
  const [, lowMm] = hole(column, lowRow);
  const lengthMm = 7 * pitchMm;
  return [
    box(xMm - 3, yMm + 4, lengthMm + 6, lowMm - yMm - 8),
    line([xMm - 3, yMm + 10], [xMm, yMm + 11.4], [xMm - 3, yMm + 13]),
    text(xMm + lengthMm / 2, (yMm + lowMm) / 2 + 1.5, name, { sizeMm: 4, anchor: "middle" }),
    ...Array.from({ length: 8 }, (_, at) => {
      const [aboveX, aboveY] = hole(column + at, topRow);
      const [belowX, belowY] = hole(column + at, lowRow);
      return [
        dot(aboveX, aboveY),
        dot(belowX, belowY),
        text(aboveX, aboveY - 4.5, `${16 - at}`, { sizeMm: 1.8, anchor: "middle" }),
        text(aboveX, aboveY - 1.8, pinName(16 - at), { sizeMm: 2, anchor: "middle" }),
        text(belowX, belowY + 3.4, pinName(1 + at), { sizeMm: 2, anchor: "middle" }),
        text(belowX, belowY + 5.8, `${1 + at}`, { sizeMm: 1.8, anchor: "middle" }),
      ].join("\n");
    }),
    // Across the supply pins on the shortest way: over the chip's back.
    `<g class="cut">${line(hole(column, topRow), hole(column + 7, lowRow))}</g>`,
    text(xMm - 4, yMm - 8, "100 nF from pin 16 to pin 8, legs under 5 mm (broken line)", { sizeMm: 2.2 }),
  ];
}

/** Eight parts on end below a chip, one a line. */
function standing(column: number, kind: "diode" | "resistor", words: string): string[] {
  return [
    ...Array.from({ length: 8 }, (_, at) => {
      const [xMm, upMm] = hole(column + at, 10);
      const [, downMm] = hole(column + at, 13);
      return [
        dot(xMm, upMm),
        dot(xMm, downMm),
        line([xMm, upMm], [xMm, upMm + 5]),
        box(xMm - 1.6, upMm + 5, 3.2, downMm - upMm - 10),
        ...(kind === "diode" ? [line([xMm - 1.6, upMm + 6.2], [xMm + 1.6, upMm + 6.2])] : []),
        line([xMm, downMm - 5], [xMm, downMm]),
        text(xMm, downMm + 3.2, `${at}`, { sizeMm: 2, anchor: "middle" }),
      ].join("\n");
    }),
    text(hole(column, 0)[0], hole(0, 14)[1] + 1, words, { sizeMm: 2.2 }),
  ];
}

/** Eight ways to the contacts, each line 330 Ω away at its contact. */
function lineHeader(): string[] {
  const [xMm, yMm] = hole(15, 17);
  return [
    box(xMm - 3, yMm - 3, 7 * pitchMm + 6, 6),
    ...Array.from({ length: 8 }, (_, at) => dot(...hole(15 + at, 17))),
    text(
      xMm - 3,
      yMm + 6,
      "lines 8n to 8n + 7, to the resistors at the contacts; diode, pull-up and input of a line meet here",
      {
        sizeMm: 2.2,
      },
    ),
  ];
}

function electrolytic(): string[] {
  const [xMm, yMm] = hole(31.5, 10);
  return [
    dot(xMm, yMm),
    dot(...hole(31.5, 11)),
    box(xMm - 4, yMm - 3, 8, pitchMm + 6),
    text(xMm, yMm - 4.5, "47 µF", { sizeMm: 2.2, anchor: "middle" }),
    text(xMm, yMm + pitchMm + 6, "every fourth board", { sizeMm: 2, anchor: "middle" }),
  ];
}

const header = (column: number, row: number, ways: readonly string[], side: "start" | "end"): string[] =>
  ways.flatMap((way, at) => {
    const [xMm, yMm] = hole(column, row + at);
    return [
      dot(xMm, yMm),
      box(xMm - 2, yMm - 2, 4, 4),
      text(side === "start" ? xMm + 4 : xMm - 4, yMm + 1, way, {
        sizeMm: 2.2,
        anchor: side === "start" ? "start" : "end",
      }),
    ];
  });

/** Small boards in the order of their numbers along one straight run, and what stands where the ribbon comes in. */
function alongTheRun(board: BoardDescription, fromMm: number): { drawn: string[]; endMm: number } {
  const boards = chipsFor(lineCountOf(board));
  const codeBoards = chipsFor(codeCountOf(board));
  const { count, wideMm, highMm } = rowsOfBoards;
  const row = (yMm: number, from: number, length: number, name: (at: number) => string): string[] =>
    Array.from({ length }, (_, at) => {
      const xMm = edgeMm + 24 + at * (wideMm + 1);
      return [
        box(xMm, yMm, wideMm, highMm),
        text(xMm + wideMm / 2, yMm + highMm / 2 + 1, name(from + at), { sizeMm: 2.4, anchor: "middle" }),
      ].join("\n");
    });
  const rows = (all: number, yMm: number, name: (at: number) => string): string[] =>
    Array.from({ length: Math.ceil(all / count) }, (_, at) => at).flatMap((at) =>
      row(yMm + at * (highMm + 3), at * count, Math.min(count, all - at * count), name),
    );
  const codesAtMm = fromMm + 6 + Math.ceil(boards / count) * (highMm + 3) + 8;
  const endMm =
    codeBoards === 0 ? codesAtMm - 4 : codesAtMm + Math.ceil(codeBoards / count) * (highMm + 3) + 4;
  return {
    drawn: [
      text(
        edgeMm,
        fromMm,
        "Along the run: 3.3 V, 0 V, shiftClock, latch, load, outputEnable from board to board",
        { sizeMm: 4 },
      ),
      box(edgeMm, fromMm + 6, 21, highMm * 2 + 3),
      ...["ribbon", "fuse 0.5 A", "47 µF", "74LVC14A", "3 × 68 Ω", "4 at rest"].map((words, at) =>
        text(edgeMm + 1.5, fromMm + 10.5 + at * 4.6, words, { sizeMm: 2.4 }),
      ),
      ...rows(boards, fromMm + 6, (at) => `board ${at}`),
      text(
        edgeMm + 24,
        codesAtMm - 5,
        `The tie: from "595 serial out" of board ${boards - 1} back to "165 serial in" of board 0, beside 0 V. "165 serial out" of board ${boards - 1} to dataIn.`,
        { sizeMm: 2.5 },
      ),
      ...(codeBoards === 0
        ? []
        : [
            ...rows(codeBoards, codesAtMm, (at) => `codes ${at}`),
            text(
              edgeMm,
              endMm,
              `Code boards: the same without 595 and diodes; "165 serial in" of number 0 to 3.3 V, "165 serial out" of number ${codeBoards - 1} to codeIn.`,
              { sizeMm: 2.5 },
            ),
          ]),
    ],
    endMm,
  };
}
