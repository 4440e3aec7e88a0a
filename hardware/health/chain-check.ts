import type { OpenPin } from "../lines/pins.ts";

/** The open pins of a chain board by signal. */
export interface ChainSignals {
  shiftClock: OpenPin;
  dataOut: OpenPin;
  latch: OpenPin;
  load: OpenPin;
  dataIn: OpenPin;
  outputEnable?: OpenPin;
  codeIn?: OpenPin;
}

type OutputSignal = "shiftClock" | "dataOut" | "latch" | "load" | "outputEnable";

/** A signal of the description, and the one whose pin it was found on. */
export interface Swap {
  signal: keyof ChainSignals;
  pin: keyof ChainSignals;
}

/** What a known word shifted round the loop of both chains says of them. */
export type ChainCheck =
  | { kind: "sound" }
  /** The inputs answer over their whole length, but the word does not come back: no tie, or a cut output chain. */
  | { kind: "no-loop" }
  /** The input chain is cut; so many 165s answer, counted from the data pin. */
  | { kind: "open-chain"; inputChipCount: number }
  | { kind: "wrong-length"; outputChipCount: number; inputChipCount: number; expectedChipCount: number }
  /** The word comes back when two signals change places. */
  | { kind: "swapped-pins"; swaps: Swap[] }
  /** The data pin never moves. */
  | { kind: "no-answer"; level: 0 | 1 };

interface Wires {
  shiftClock: OpenPin;
  dataOut: OpenPin;
  latch: OpenPin;
  load: OpenPin;
  outputEnable?: OpenPin;
  input: OpenPin;
}

/** Bits that must agree before a returned word is believed: one chance in 2^48 by luck. */
const provingBits = 48;
/** So many chips more than described are still found and counted. */
const mostExtraBits = 128;

/**
 * Shifts a pseudo-random word through the 595s and, by the tie, on through the 165s. The latch is left alone,
 * so no line moves. The delay of the word is the length of both chains; with the inputs taken in half way, where
 * the word starts again is the length of the 165s. Only where the word does not come back are the outputs
 * switched off and pairs of signals tried the other way round, to name swapped pins; what the latches hold
 * afterwards is then anything.
 *
 * @throws LinesError `pin-failed`
 */
export function checkChain(signals: ChainSignals, { lineBits }: { lineBits: number }): ChainCheck {
  const usual = wiresOf(signals, signals.dataIn);
  const lengths = loopLengths(usual, lineBits, mostExtraBits);
  if (lengths !== undefined) {
    if (lengths.outputBits === lineBits && lengths.inputBits === lineBits) return { kind: "sound" };
    return {
      kind: "wrong-length",
      outputChipCount: lengths.outputBits / 8,
      inputChipCount: lengths.inputBits / 8,
      expectedChipCount: lineBits / 8,
    };
  }
  const unlooped = readUnlooped(usual, lineBits);
  const swaps = findSwaps(signals, lineBits);
  return swaps.length > 0 ? { kind: "swapped-pins", swaps } : unlooped;
}

function wiresOf(signals: ChainSignals, input: OpenPin): Wires {
  const { shiftClock, dataOut, latch, load, outputEnable } = signals;
  return { shiftClock, dataOut, latch, load, input, ...(outputEnable === undefined ? {} : { outputEnable }) };
}

/** A maximal-length sequence of 16 bits (taps 16, 15, 13, 4): no stretch of it looks like another. */
function testWord(bitCount: number): (0 | 1)[] {
  let state = 0xace1;
  return Array.from({ length: bitCount }, () => {
    const bit = (state ^ (state >> 1) ^ (state >> 3) ^ (state >> 12)) & 1;
    state = (state >> 1) | (bit << 15);
    return bit === 1 ? 1 : 0;
  });
}

/** Shifts a word out and gives what was read before each clock. */
function shift({ shiftClock, dataOut, input }: Wires, word: readonly (0 | 1)[]): (0 | 1)[] {
  return word.map((bit) => {
    const read = input.read();
    dataOut.write(bit);
    shiftClock.write(1);
    shiftClock.write(0);
    return read;
  });
}

function pulseLoad({ load }: Wires): void {
  load.write(0);
  load.write(1);
}

/** Leaves the serial input high, the level the exchange starts from. */
function restore({ dataOut }: Wires): void {
  dataOut.write(1);
}

/** Lengths of both chains, or undefined where the word does not come back or the inputs are never taken in. */
function loopLengths(
  wires: Wires,
  lineBits: number,
  spareBits: number,
): { outputBits: number; inputBits: number } | undefined {
  const word = testWord(2 * lineBits + spareBits + provingBits);
  const first = shift(wires, word);
  const delay = delayOf(word, first);
  if (delay === undefined) {
    restore(wires);
    return undefined;
  }
  pulseLoad(wires);
  const second = shift(wires, new Array<1>(delay).fill(1));
  restore(wires);
  // Untouched by the load, the word would simply go on; the inputs took the place of the part that differs.
  const lastOther = second.findLastIndex((bit, step) => bit !== word[word.length + step - delay]);
  const inputBits = 8 * Math.ceil((lastOther + 1) / 8);
  return inputBits === 0 ? undefined : { inputBits, outputBits: delay - inputBits };
}

function delayOf(word: readonly number[], read: readonly number[]): number | undefined {
  for (let delay = 8; delay <= word.length - provingBits; delay += 8) {
    if (read.slice(delay).every((bit, step) => bit === word[step])) return delay;
  }
  return undefined;
}

/** Without the loop: how many inputs answer before the chain's end level, or the level of a data pin at rest. */
function readUnlooped(wires: Wires, lineBits: number): ChainCheck {
  shift(wires, new Array<1>(2 * lineBits + mostExtraBits).fill(1));
  pulseLoad(wires);
  const read = shift(wires, new Array<1>(lineBits + mostExtraBits).fill(1));
  restore(wires);
  const level = read.at(-1) ?? 0;
  const lastOther = read.findLastIndex((bit) => bit !== level);
  if (lastOther === -1) return level === 1 ? readPulled(wires, lineBits) : { kind: "no-answer", level };
  const inputChipCount = Math.ceil((lastOther + 1) / 8);
  return inputChipCount < lineBits / 8 ? { kind: "open-chain", inputChipCount } : { kind: "no-loop" };
}

/**
 * All inputs read high, as they do on a board at rest and behind a cut that reads high: with every line pulled only
 * what lies behind the cut stays so. What answers next to the data pin is counted.
 */
function readPulled(wires: Wires, lineBits: number): ChainCheck {
  const show = (level: 0 | 1): void => {
    shift(wires, new Array<0 | 1>(lineBits).fill(level));
    wires.latch.write(1);
    wires.latch.write(0);
  };
  show(0);
  pulseLoad(wires);
  const read = shift(wires, new Array<1>(lineBits).fill(1));
  show(1);
  restore(wires);
  if (!read.includes(0)) return { kind: "no-answer", level: 1 };
  const chipCount = lineBits / 8;
  const silentChip = Array.from({ length: chipCount }, (_, chip) => chip).find(
    (chip) => !read.slice(8 * chip, 8 * (chip + 1)).includes(0),
  );
  // A silent chip at the near end is no cut there: then the outputs of its lines do not pull.
  return silentChip === undefined || silentChip === 0
    ? { kind: "no-loop" }
    : { kind: "open-chain", inputChipCount: silentChip };
}

/** With the outputs off, tries every pair of outputs the other way round, and the two inputs, alone and with it. */
function findSwaps(signals: ChainSignals, lineBits: number): Swap[] {
  const outputs: OutputSignal[] = ["shiftClock", "dataOut", "latch", "load"];
  if (signals.outputEnable !== undefined) outputs.push("outputEnable");
  const pairs = outputs.flatMap((a, at) => outputs.slice(at + 1).map((b) => swap(a, b)));
  const inputPairs = signals.codeIn === undefined ? [] : [swap("dataIn", "codeIn")];
  const tries = [
    ...inputPairs,
    ...pairs,
    ...inputPairs.flatMap((ins) => pairs.map((outs) => [...outs, ...ins])),
  ];
  try {
    return tries.find((swaps) => comesBack(signals, swaps, lineBits)) ?? [];
  } finally {
    rest(wiresOf(signals, signals.dataIn), 0);
  }
}

const swap = (a: keyof ChainSignals, b: keyof ChainSignals): Swap[] => [
  { signal: a, pin: b },
  { signal: b, pin: a },
];

function comesBack(signals: ChainSignals, swaps: readonly Swap[], lineBits: number): boolean {
  const pin = (signal: keyof ChainSignals): OpenPin | undefined =>
    signals[swaps.find((one) => one.signal === signal)?.pin ?? signal];
  const outputEnable = pin("outputEnable");
  const wires: Wires = {
    shiftClock: pin("shiftClock") ?? signals.shiftClock,
    dataOut: pin("dataOut") ?? signals.dataOut,
    latch: pin("latch") ?? signals.latch,
    load: pin("load") ?? signals.load,
    input: pin("dataIn") ?? signals.dataIn,
    ...(outputEnable === undefined ? {} : { outputEnable }),
  };
  rest(wires, 1);
  const lengths = loopLengths(wires, lineBits, 0);
  return lengths?.inputBits === lineBits && lengths.outputBits === lineBits;
}

/** Puts every output at its level between exchanges. */
function rest({ shiftClock, dataOut, latch, load, outputEnable }: Wires, enable: 0 | 1): void {
  outputEnable?.write(enable);
  shiftClock.write(0);
  latch.write(0);
  load.write(1);
  dataOut.write(1);
}
