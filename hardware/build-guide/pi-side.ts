import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf, pullUpOf } from "./board-wiring.ts";
import { componentValues as values } from "../lines/component-values.ts";
import { supplyPins } from "./header-pins.ts";
import { pinTable } from "./pin-table.ts";
import { capacitor, resistor, restResistor } from "./symbols.ts";
import { box, dot, line, text } from "./svg.ts";

/** Which level a resistor on the board holds a signal at until the bench runs; inputs of the Pi need none. */
const restLevel: Readonly<Record<string, "3.3 V" | "0 V">> = {
  shiftClock: "0 V",
  latch: "0 V",
  load: "3.3 V",
  outputEnable: "3.3 V",
};
const buffered = ["shiftClock", "latch", "load"];

/** Pins, their resistors, the resistors at rest, and the gates that make the common edges steep. */
export function piSide(board: BoardDescription): string[] {
  const rows = pinTable(board);
  const topMm = 30;
  return [
    box(12, topMm, 58, 9 * rows.length + 9),
    text(14, topMm + 5, "Raspberry Pi, 40-pin header"),
    ...rows.flatMap(({ bcm, headerPin, signal }, index) => {
      const yMm = topMm + 9 + index * 9;
      const rest = restLevel[signal];
      return [
        text(14, yMm + 1, `pin ${headerPin ?? "?"}  BCM ${bcm}  ${signal}`),
        line([70, yMm], [76, yMm]),
        ...resistor(76, yMm, `${values.gpioResistorOhm} Ω`),
        ...(rest === undefined ? [] : restResistor(88, yMm, rest, `${pullUpOf(board) / 1000} kΩ`)),
        ...(buffered.includes(signal) ? gates(yMm) : [line([85, yMm], [144, yMm])]),
        text(146, yMm + 1, signal),
      ];
    }),
    text(110, topMm + 3, "74LVC14A", { sizeMm: 2.5 }),
  ];
}

/** Two inverting gates in a row, and the resistor that keeps the run behind them from ringing. */
const gates = (yMm: number): string[] => [
  line([85, yMm], [107, yMm]),
  ...[107, 116].flatMap((xMm) => [
    line([xMm, yMm - 3], [xMm, yMm + 3], [xMm + 6, yMm], [xMm, yMm - 3]),
    line([xMm + 6, yMm], [xMm + 9, yMm]),
  ]),
  line([125, yMm], [128, yMm]),
  ...resistor(128, yMm, `${values.clockResistorOhm} Ω`),
  line([137, yMm], [144, yMm]),
];

/** The 3.3 V feed: fuse, the capacitor where it comes in, and those at the chips. */
export function supplyDetail(board: BoardDescription): string[] {
  const chips = 2 * chipsFor(lineCountOf(board)) + chipsFor(codeCountOf(board)) + 1;
  const [leftMm, yMm] = [190, 100];
  return [
    text(leftMm, yMm - 6, "Supply", { sizeMm: 4 }),
    text(leftMm, yMm + 1, `3.3 V, header pins ${supplyPins.volts33.join(" and ")}`, { sizeMm: 2.5 }),
    line([leftMm + 40, yMm], [leftMm + 46, yMm]),
    ...resistor(leftMm + 46, yMm, "fuse 0.5 A"),
    line([leftMm + 55, yMm], [leftMm + 180, yMm]),
    ...capacitor(leftMm + 66, yMm, "47 µF at the ribbon"),
    ...capacitor(leftMm + 104, yMm, "100 nF, pin 16 to pin 8, each chip"),
    ...capacitor(leftMm + 156, yMm, "47 µF, 1 for 8 chips"),
    dot(leftMm + 180, yMm),
    text(leftMm + 183, yMm + 1, `${chips} chips, all pull-ups`, { sizeMm: 2.5 }),
    text(leftMm, yMm + 10, `0 V: header pins ${supplyPins.zeroVolts.join(", ")}`, { sizeMm: 2.5 }),
  ];
}
