import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf, namedLines, pullUpOf } from "./board-wiring.ts";
import { inputChip, outputChip } from "./chip-pins.ts";
import { componentValues as values } from "../lines/component-values.ts";
import { piSide, supplyDetail } from "./pi-side.ts";
import { pinTable } from "./pin-table.ts";
import { resistor } from "./symbols.ts";
import { box, dot, line, page, text } from "./svg.ts";

const widthMm = 420;
const chipsInRow = 9;
const chipStepMm = 44;
const rowStepMm = 25;

/** The schematic of a board as one SVG page, drawn from its description. */
export function schematic(board: BoardDescription): string {
  return board.wiring.kind === "chain" ? chainSchematic(board) : directSchematic(board);
}

const title = (board: BoardDescription): string[] => [
  text(12, 14, `${board.name}: schematic`, { sizeMm: 6 }),
  text(
    12,
    20,
    "Extra-low voltage, 3.3 V from a SELV source. Never joined to the mains; no contact to the mains earth.",
  ),
];

function chainSchematic(board: BoardDescription): string {
  const chips = chipsFor(lineCountOf(board));
  const codeChips = chipsFor(codeCountOf(board));
  const outputTopMm = 122;
  const inputTopMm = outputTopMm + rowStepMm * Math.ceil(chips / chipsInRow) + 10;
  const codeTopMm = inputTopMm + rowStepMm * Math.ceil(chips / chipsInRow) + 10;
  const heightMm = codeTopMm + rowStepMm * Math.ceil(codeChips / chipsInRow) + 12;
  return page(widthMm, heightMm, `${board.name}: schematic`, [
    ...title(board),
    ...piSide(board),
    ...supplyDetail(board),
    ...lineDetail(board),
    ...(codeChips > 0 ? codeDetail(board) : []),
    ...chipRow(outputTopMm, chips, {
      heading: `Outputs: ${outputChip.name}. SRCLK, RCLK and OE of all are common; clear to 3.3 V.`,
      first: "from dataOut",
      name: (chip) => [`${outputChip.name} no. ${chip}`, `lines ${8 * chip} to ${8 * chip + 7}`],
      last: "tie: to SER of 165 no. 0",
    }),
    ...chipRow(inputTopMm, chips, {
      heading: `Inputs: ${inputChip.name}. CLK and SH/LD of all are common; clock inhibit to 0 V.`,
      first: "tie: from the last 595",
      name: (chip) => [`${inputChip.name} no. ${chip}`, `lines ${8 * chip} to ${8 * chip + 7}`],
      last: "to dataIn",
    }),
    ...(codeChips > 0
      ? chipRow(codeTopMm, codeChips, {
          heading: `Codes: ${inputChip.name}, on the same CLK and SH/LD.`,
          first: "SER to 3.3 V",
          name: (chip) => [`${inputChip.name} code no. ${chip}`, `codes ${8 * chip} to ${8 * chip + 7}`],
          last: "to codeIn",
        })
      : []),
  ]);
}

/** One line, from output to contact to input. */
function lineDetail(board: BoardDescription): string[] {
  const [leftMm, yMm] = [190, 62];
  return [
    text(leftMm, 34, "One line of all", { sizeMm: 4 }),
    box(leftMm, yMm - 8, 26, 16),
    text(leftMm + 2, yMm - 2, outputChip.name),
    text(leftMm + 2, yMm + 3, "output i"),
    line([leftMm + 26, yMm], [leftMm + 38, yMm]),
    // The diode conducts from the line to the output: it can pull, never push.
    line([leftMm + 38, yMm - 3], [leftMm + 38, yMm + 3]),
    line([leftMm + 44, yMm - 3], [leftMm + 44, yMm + 3], [leftMm + 38, yMm], [leftMm + 44, yMm - 3]),
    text(leftMm + 41, yMm + 8, "Schottky", { sizeMm: 2.5, anchor: "middle" }),
    line([leftMm + 44, yMm], [leftMm + 80, yMm]),
    dot(leftMm + 56, yMm),
    line([leftMm + 56, yMm], [leftMm + 56, yMm - 6]),
    box(leftMm + 54.5, yMm - 15, 3, 9),
    line([leftMm + 56, yMm - 15], [leftMm + 56, yMm - 20]),
    text(leftMm + 56, yMm - 21.5, "3.3 V", { anchor: "middle" }),
    text(leftMm + 59, yMm - 9, `${pullUpOf(board) / 1000} kΩ`, { sizeMm: 2.5 }),
    dot(leftMm + 66, yMm),
    line([leftMm + 66, yMm], [leftMm + 66, yMm + 18], [leftMm + 80, yMm + 18]),
    box(leftMm + 80, yMm + 10, 26, 16),
    text(leftMm + 82, yMm + 16, inputChip.name),
    text(leftMm + 82, yMm + 21, "input i"),
    ...resistor(leftMm + 80, yMm, `${values.contactResistorOhm} Ω`),
    line([leftMm + 89, yMm], [leftMm + 100, yMm]),
    `<circle cx="${leftMm + 102}" cy="${yMm}" r="2" style="fill:none;stroke:#23272b;stroke-width:.35"/>`,
    text(leftMm + 106, yMm + 1, "contact i"),
  ];
}

/** One code contact: the plug straps it to 0 V. */
function codeDetail(board: BoardDescription): string[] {
  const [leftMm, yMm] = [325, 62];
  return [
    text(leftMm, 34, "One code contact", { sizeMm: 4 }),
    box(leftMm, yMm - 8, 26, 16),
    text(leftMm + 2, yMm - 2, inputChip.name),
    text(leftMm + 2, yMm + 3, "code input"),
    line([leftMm + 26, yMm], [leftMm + 48, yMm]),
    dot(leftMm + 36, yMm),
    line([leftMm + 36, yMm], [leftMm + 36, yMm - 6]),
    box(leftMm + 34.5, yMm - 15, 3, 9),
    line([leftMm + 36, yMm - 15], [leftMm + 36, yMm - 20]),
    text(leftMm + 36, yMm - 21.5, "3.3 V", { anchor: "middle" }),
    text(leftMm + 39, yMm - 9, `${pullUpOf(board) / 1000} kΩ`, { sizeMm: 2.5 }),
    ...resistor(leftMm + 48, yMm, `${values.contactResistorOhm} Ω`),
    line([leftMm + 57, yMm], [leftMm + 64, yMm]),
    text(leftMm + 66, yMm + 1, "contact"),
    text(leftMm, yMm + 16, "The plug joins it to the 0 V contact beside it", { sizeMm: 2.5 }),
    text(leftMm, yMm + 20, "where its code has a 1, and leaves it open for a 0.", { sizeMm: 2.5 }),
  ];
}

interface ChipRow {
  heading: string;
  first: string;
  last: string;
  name: (chip: number) => [string, string];
}

/** Chips in serial order, row under row, with the way of the data drawn from each to the next. */
function chipRow(topMm: number, count: number, { heading, first, last, name }: ChipRow): string[] {
  const corner = (chip: number): [number, number] => [
    14 + (chip % chipsInRow) * chipStepMm,
    topMm + Math.floor(chip / chipsInRow) * rowStepMm,
  ];
  return [
    text(12, topMm - 7, heading, { sizeMm: 3.5 }),
    ...Array.from({ length: count }, (_, chip) => {
      const [xMm, yMm] = corner(chip);
      const [top, below] = name(chip);
      const isRowEnd = chip % chipsInRow === chipsInRow - 1;
      const arrow =
        chip === count - 1
          ? [text(xMm + 18, yMm + 15.5, last, { sizeMm: 2.5, anchor: "middle" })]
          : isRowEnd
            ? [
                line(
                  [xMm + 36, yMm + 6],
                  [xMm + 39, yMm + 6],
                  [xMm + 39, yMm + 18],
                  [10, yMm + 18],
                  [10, yMm + rowStepMm + 6],
                  [14, yMm + rowStepMm + 6],
                ),
              ]
            : [line([xMm + 36, yMm + 6], [xMm + chipStepMm, yMm + 6])];
      return [
        box(xMm, yMm, 36, 12),
        text(xMm + 18, yMm + 5, top, { anchor: "middle" }),
        text(xMm + 18, yMm + 9.5, below, { sizeMm: 2.5, anchor: "middle" }),
        ...(chip === 0 ? [text(xMm, yMm - 1.5, first, { sizeMm: 2.5 })] : []),
        ...arrow,
      ].join("\n");
    }),
  ];
}

function directSchematic(board: BoardDescription): string {
  const rows = pinTable(board);
  const lineOfBcm = new Map(
    board.wiring.kind === "direct" ? board.wiring.pins.map((bcm, index) => [bcm, index] as const) : [],
  );
  const names = new Map(namedLines(board).map(({ line: index, name }) => [index, name]));
  const topMm = 34;
  const endMm = topMm + 9 * rows.length;
  return page(widthMm / 2, endMm + 14, `${board.name}: schematic`, [
    ...title(board),
    box(12, topMm - 6, 48, 9 * rows.length + 6),
    text(14, topMm - 1, "Raspberry Pi, 40-pin header"),
    line([112, topMm - 4], [112, endMm]),
    text(112, topMm - 6, "3.3 V behind the fuse, 0.5 A", { sizeMm: 2.5, anchor: "middle" }),
    ...rows.flatMap(({ bcm, headerPin }, index) => {
      const yMm = topMm + 7 + index * 9;
      const lineIndex = lineOfBcm.get(bcm) ?? 0;
      return [
        text(14, yMm + 1, `pin ${headerPin ?? "?"}  BCM ${bcm}`),
        line([60, yMm], [64, yMm]),
        ...resistor(64, yMm, `${values.gpioResistorOhm} Ω`),
        line([73, yMm], [120, yMm]),
        dot(88, yMm),
        line([88, yMm], [88, yMm - 4], [94, yMm - 4]),
        box(94, yMm - 5.5, 9, 3),
        line([103, yMm - 4], [112, yMm - 4]),
        dot(112, yMm - 4),
        text(98.5, yMm - 6, `${pullUpOf(board) / 1000} kΩ`, { sizeMm: 2.2, anchor: "middle" }),
        ...resistor(120, yMm, `${values.contactResistorOhm} Ω`),
        line([129, yMm], [136, yMm]),
        text(138, yMm + 1, `line ${lineIndex}: ${names.get(lineIndex) ?? "spare"}`),
      ];
    }),
  ]);
}
