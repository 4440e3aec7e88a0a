/**
 * Values of the board's parts, with where each comes from. The levels are those that data sheets promise at 3.3 V,
 * not those usually found.
 */
export const componentValues = {
  supplyV: 3.3,
  pullUpOhm: 10_000,
  /** Limits what a short of a contact can draw from an output. */
  contactResistorOhm: 330,
  /** Limits what a swapped or shorted pin can draw from the Pi. */
  gpioResistorOhm: 330,
  /** Small-signal Schottky diode at a few mA, from memory of common data sheets. */
  diodeDropV: 0.35,
  /** 74HC595 output low at a few mA, from memory (SCLS041). */
  outputLowV: 0.1,
  /** 74HC input low, least promised at 3.3 V: 0.3 of the supply, from memory (between 0.5 V at 2 V and 1.35 V at 4.5 V). */
  inputLowV: 0.99,
  /** A Raspberry Pi pin's low, least promised, from memory of its documentation. */
  piInputLowV: 0.8,
  /** Leakage of the diode at rest, of a common Schottky at 25 °C and at an input, most; from memory. */
  diodeLeakageMicroamp: 2,
  inputLeakageMicroamp: 1,
  /** 74HC input high, most promised at 3.3 V: 0.7 of the supply, from memory. */
  inputHighV: 2.31,
  /** A Raspberry Pi pin's high, most promised, from memory. */
  piInputHighV: 2.0,
  /** All outputs of a 74HC595 together, from memory. */
  chipMostMilliamp: 70,
  /** Clock input of a 74HC chip, most promised, and a clock run past all chips (estimated). */
  chipInputPicofarad: 10,
  clockRunPicofarad: 200,
  /** In series at each driver of a clock run, so that the run does not ring. */
  clockResistorOhm: 68,
  /** Slowest clock edge of 74HC at 3.3 V, between 1 µs at 2 V and 0.5 µs at 4.5 V; from memory. */
  clockEdgeMostUs: 0.7,
  /** Fixed pull-ups that the Pi itself has on BCM 2 and 3, from memory of its schematics. */
  piPullUpOhm: 1_800,
  /** What a 74HC output may carry for good, from memory. */
  outputMostMilliamp: 25,
  /** Quiescent current of a 74HC chip at 85 °C, from memory. */
  chipQuiescentMilliamp: 0.08,
  /** What the Pi's 3.3 V pins may give in all. Common practice, no source. */
  piSupplyMilliamp: 300,
  /** What a Raspberry Pi's own pin may carry, from memory of its documentation. */
  piPinMilliamp: 16,
} as const;
