import type { ChainOptions } from "../../../hardware/lines/chain-lines.ts";
import type { LineReading, Lines } from "../../../hardware/lines/lines.ts";
import { openPins } from "../../../hardware/lines/open-pins.ts";

/** Slips that a driver of shift registers is easily written with. */
export const slips = [
  "no latch",
  "wrong edge",
  "reversed order",
  "load late",
  "off by one",
  "missing clock",
] as const;
export type Slip = (typeof slips)[number];

/**
 * A second driver of a chain board, plainly written and apart from the bench's own, with one slip in it or none.
 */
export async function openWithSlip(options: ChainOptions, slip: Slip | "none"): Promise<Lines> {
  const { lineCount } = options;
  const bits = 8 * Math.ceil(lineCount / 8);
  const { shiftClock, dataOut, latch, load, dataIn, outputEnable, codeIn } = options.pins;
  const { pins } = await openPins([
    ...(outputEnable === undefined
      ? []
      : [{ name: "outputEnable", bcm: outputEnable, direction: "high" as const }]),
    ...(codeIn === undefined ? [] : [{ name: "codeIn", bcm: codeIn, direction: "in" as const }]),
    { name: "shiftClock", bcm: shiftClock, direction: "low" },
    { name: "dataOut", bcm: dataOut, direction: "high" },
    { name: "latch", bcm: latch, direction: "low" },
    { name: "load", bcm: load, direction: "high" },
    { name: "dataIn", bcm: dataIn, direction: "in" },
  ]);
  const pin = (name: string) => {
    const found = pins[name];
    if (found === undefined) throw new Error(`no pin ${name}`);
    return found;
  };
  const pulse = (name: string, active: 0 | 1) => {
    pin(name).write(active);
    pin(name).write(active === 1 ? 0 : 1);
  };
  const lineAt = (step: number) => (slip === "reversed order" ? step : bits - 1 - step);

  const exchange = (next: Uint8Array): LineReading => {
    const lines = new Uint8Array(lineCount);
    const take = (step: number) => {
      const line = lineAt(step);
      const low = pin("dataIn").read() === 0 ? 1 : 0;
      if (line < lineCount) lines[line] = low;
    };
    const give = (step: number) => pin("dataOut").write(next[lineAt(step)] === 1 ? 0 : 1);
    if (slip !== "load late") pulse("load", 0);
    const steps = slip === "missing clock" ? bits - 1 : bits;
    for (let step = 0; step < steps; step += 1) {
      if (slip !== "off by one" && slip !== "wrong edge") take(step);
      if (slip !== "wrong edge") give(step);
      pin("shiftClock").write(1);
      if (slip === "wrong edge") give(step);
      if (slip === "off by one" || slip === "wrong edge") take(step);
      pin("shiftClock").write(0);
    }
    if (slip !== "no latch") pulse("latch", 1);
    if (slip === "load late") pulse("load", 0);
    return { lines, codes: new Uint8Array(options.codeCount) };
  };

  exchange(new Uint8Array(lineCount));
  if (outputEnable !== undefined) pin("outputEnable").write(0);
  return {
    lineCount,
    codeCount: options.codeCount,
    exchange,
    close: () => {
      if (outputEnable !== undefined) pin("outputEnable").write(1);
      for (const open of Object.values(pins).reverse()) open.close();
    },
  };
}
