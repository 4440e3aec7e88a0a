/** Package pins (16-pin DIP and SO) of the chips, from memory of SCLS041 and SCLS116 (Texas Instruments). */
export const outputChip = {
  name: "74HC595",
  /** QA to QH: outputs 0 to 7. */
  outputPins: [15, 1, 2, 3, 4, 5, 6, 7],
  serialIn: 14,
  serialOut: 9,
  shiftClock: 11,
  latch: 12,
  outputEnable: 13,
  clear: 10,
  supply: 16,
  zeroVolts: 8,
} as const;

export const inputChip = {
  name: "74HC165",
  /** A to H: inputs 0 to 7. */
  inputPins: [11, 12, 13, 14, 3, 4, 5, 6],
  serialIn: 10,
  serialOut: 9,
  shiftClock: 2,
  clockInhibit: 15,
  load: 1,
  supply: 16,
  zeroVolts: 8,
} as const;

export const letterOf = (bit: number): string => "ABCDEFGH"[bit] ?? "?";
