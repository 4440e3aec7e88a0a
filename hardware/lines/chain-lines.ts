import { type ChainCheck, type ChainSignals, checkChain } from "../health/chain-check.ts";
import { type LineReading, type Lines, LinesError } from "./lines.ts";
import { type GpioAccess, openPins, type PinsThrough } from "./open-pins.ts";
import type { PinRequest } from "./pins.ts";

/** BCM numbers of the signals of a 595/165 board. */
export interface ChainPins {
  shiftClock: number;
  dataOut: number;
  latch: number;
  load: number;
  dataIn: number;
  outputEnable?: number | undefined;
  codeIn?: number | undefined;
}

export interface ChainOptions extends GpioAccess {
  pins: ChainPins;
  lineCount: number;
  codeCount: number;
  /** From the latch to the next load at least: a released line rises meanwhile. */
  settleUs?: number;
}

export interface ChainLines extends Lines {
  /**
   * Shifts a known word round the loop of both chains; no line of a sound board moves. See `checkChain`.
   * Afterwards nothing is pulled, whatever the pattern before was.
   */
  chainCheck(): ChainCheck;
  readonly through: PinsThrough;
}

/** Bits of a chain of eight-bit registers that holds so many lines. */
export const registerBits = (count: number): number => 8 * Math.ceil(count / 8);

/**
 * Opens a board of 74HC595 outputs and 74HC165 inputs. The outputs stay off until a first pattern that releases
 * every line stands in the latches.
 *
 * @throws LinesError as `openPins`, and `board-not-found` where every released line reads low and the data pin
 * never moves: it is pulled down in the boot configuration, so this is what an absent or unpowered board looks
 * like. A board with swapped pins or a cut chain opens; `chainCheck` says what is wrong with it.
 */
export async function openChainLines(options: ChainOptions): Promise<ChainLines> {
  const { pins, through } = await openPins(requestsFor(options.pins), options);
  const signals: ChainSignals = pins;
  const lines = { ...chainLines(signals, options), through };
  try {
    const released = new Uint8Array(options.lineCount);
    lines.exchange(released);
    signals.outputEnable?.write(0);
    const { lines: readings } = lines.exchange(released);
    if (readings.every((low) => low === 1) && lines.chainCheck().kind === "no-answer") {
      throw new LinesError("board-not-found", { wiring: "chain", bcm: options.pins.dataIn });
    }
  } catch (error) {
    lines.close();
    throw error;
  }
  return lines;
}

/** Output enable comes first: high, it keeps every line released while the other pins find their levels. */
function requestsFor(pins: ChainPins): PinRequest<keyof ChainSignals>[] {
  const { outputEnable, codeIn } = pins;
  return [
    ...(outputEnable === undefined
      ? []
      : [{ name: "outputEnable", bcm: outputEnable, direction: "high" } as const]),
    { name: "load", bcm: pins.load, direction: "high" },
    { name: "latch", bcm: pins.latch, direction: "low" },
    { name: "shiftClock", bcm: pins.shiftClock, direction: "low" },
    { name: "dataOut", bcm: pins.dataOut, direction: "high" },
    { name: "dataIn", bcm: pins.dataIn, direction: "in" },
    ...(codeIn === undefined ? [] : [{ name: "codeIn", bcm: codeIn, direction: "in" } as const]),
  ];
}

function chainLines(
  signals: ChainSignals,
  { lineCount, codeCount, settleUs = 0 }: ChainOptions,
): Omit<ChainLines, "through"> {
  const { shiftClock, dataOut, latch, load, dataIn, outputEnable, codeIn } = signals;
  const lineBits = registerBits(lineCount);
  const codeBits = codeIn === undefined ? 0 : registerBits(codeCount);
  let dataLevel: 0 | 1 = 1;
  let isPulling = false;
  let isClosed = false;
  let settledNs = 0n;

  const exchange = (next: Uint8Array): LineReading => {
    const reading = { lines: new Uint8Array(lineCount), codes: new Uint8Array(codeCount) };
    waitUntil(settledNs);
    load.write(0);
    load.write(1);
    const codeBitsNow = isPulling ? 0 : codeBits;
    // Bits leave the far end first, in and out: the step down from the longest chain is each chain's own index.
    for (let behind = 1; behind <= Math.max(lineBits, codeBitsNow); behind += 1) {
      const line = lineBits - behind;
      const code = codeBitsNow - behind;
      if (line >= 0 && line < lineCount) reading.lines[line] = 1 - dataIn.read();
      if (code >= 0 && code < codeCount && codeIn !== undefined) reading.codes[code] = 1 - codeIn.read();
      const out = Math.max(lineBits, codeBitsNow) - behind;
      const level = next[out] === 1 ? 0 : 1;
      if (level !== dataLevel) {
        dataOut.write(level);
        dataLevel = level;
      }
      shiftClock.write(1);
      shiftClock.write(0);
    }
    latch.write(1);
    latch.write(0);
    settledNs = process.hrtime.bigint() + BigInt(Math.round(settleUs * 1_000));
    isPulling = next.includes(1);
    return reading;
  };

  return {
    lineCount,
    codeCount,
    exchange,
    chainCheck: () => {
      const check = checkChain(signals, { lineBits });
      dataLevel = 1;
      exchange(new Uint8Array(lineCount));
      return check;
    },
    close: () => {
      if (isClosed) return;
      isClosed = true;
      try {
        exchange(new Uint8Array(lineCount));
      } catch {
        // A pin failed already; output enable still releases every line.
      }
      try {
        outputEnable?.write(1);
      } catch {
        // The pull-up on the board holds it high once the pin is given back.
      }
      for (const pin of [shiftClock, dataOut, latch, load, dataIn, codeIn, outputEnable]) pin?.close();
    },
  };
}

/** Some microseconds at most: no timer is as fine. */
function waitUntil(momentNs: bigint): void {
  while (process.hrtime.bigint() < momentNs);
}
