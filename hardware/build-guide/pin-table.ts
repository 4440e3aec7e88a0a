import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { headerPinOfBcm } from "./header-pins.ts";

export interface PinRow {
  bcm: number;
  headerPin: number | undefined;
  signal: string;
  /** Where it goes on the board. */
  to: string;
  /** The level that a resistor on the board and the boot configuration hold it at, before the bench runs. */
  atRest: string;
}

const chainSignals: Record<string, Pick<PinRow, "to" | "atRest">> = {
  shiftClock: { to: "through the 74LVC14A to SRCLK of every 595 and CLK of every 165", atRest: "low" },
  dataOut: { to: "SER of 595 number 0", atRest: "low" },
  latch: { to: "through the 74LVC14A to RCLK of every 595", atRest: "low" },
  load: { to: "through the 74LVC14A to SH/LD of every 165", atRest: "high" },
  dataIn: { to: "QH of the last 165", atRest: "low: no board reads as all low" },
  outputEnable: { to: "OE of every 595, 10 kΩ to 3.3 V", atRest: "high: every line released" },
  codeIn: { to: "QH of the last code 165", atRest: "low" },
};

/** One row a pin, in the order of the header. */
export function pinTable({ wiring }: BoardDescription): PinRow[] {
  const rows =
    wiring.kind === "chain"
      ? Object.entries(wiring.pins).flatMap(([signal, bcm]) => {
          const facts = chainSignals[signal];
          return bcm === undefined || facts === undefined ? [] : [{ bcm, signal, ...facts }];
        })
      : wiring.pins.map((bcm, line) => ({
          bcm,
          signal: `line ${line}`,
          to: `line ${line}, 10 kΩ to 3.3 V`,
          atRest: "pulled up by the board, weakly down by the Pi: no board reads as all low",
        }));
  return rows
    .map((row) => ({ ...row, headerPin: headerPinOfBcm[row.bcm] }))
    .sort((a, b) => (a.headerPin ?? 99) - (b.headerPin ?? 99));
}
