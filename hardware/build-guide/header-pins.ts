/**
 * Places on the 40-pin header by BCM number. Raspberry Pi documentation, "GPIO and the 40-pin header", from memory;
 * the same on every model with 40 pins.
 */
export const headerPinOfBcm: Readonly<Record<number, number>> = {
  0: 27,
  1: 28,
  2: 3,
  3: 5,
  4: 7,
  5: 29,
  6: 31,
  7: 26,
  8: 24,
  9: 21,
  10: 19,
  11: 23,
  12: 32,
  13: 33,
  14: 8,
  15: 10,
  16: 36,
  17: 11,
  18: 12,
  19: 35,
  20: 38,
  21: 40,
  22: 15,
  23: 16,
  24: 18,
  25: 22,
  26: 37,
  27: 13,
};

/** Header pins with the 3.3 V supply, and with 0 V. */
export const supplyPins = { volts33: [1, 17], zeroVolts: [6, 9, 14, 20, 25, 30, 34, 39] } as const;

/** BCM numbers with a fixed pull-up on the Pi: no line of a direct board, its low would not be low enough. */
export const pulledUpBcm: readonly number[] = [2, 3];
