import { readFileSync, writeFileSync } from "node:fs";
import type { ChainPins } from "../../../hardware/lines/chain-lines.ts";

const controlFile = "/sys/class/gpio/.control";

/** Signals in the order of the emulated board's `chain` command. */
const signals = ["shiftClock", "dataOut", "latch", "load", "dataIn", "outputEnable", "codeIn"] as const;

export interface GpioReport {
  pins: Record<string, { isExported: boolean; isOut: boolean; level: 0 | 1; reads: number; writes: number }>;
  reads: number;
  writes: number;
  directionWrites: number;
  opens: number;
  /** Lines whose output pulls now. */
  pulled: number[];
  /** How often any line began to be pulled since the board was put there. */
  pullEvents: number;
  drivenHighEvents: number;
}

/** Gives commands to the emulated board; an unknown or impossible one throws EINVAL. */
export function control(...commands: string[]): void {
  writeFileSync(controlFile, commands.join("\n"));
}

/** Calls counted and levels seen by the file system. */
export function report(): GpioReport {
  return JSON.parse(readFileSync(controlFile, "utf8")) as GpioReport;
}

/** A fresh kernel with the header's chip at `base`, beside a firmware expander that a careless search would take. */
export function freshKernel(base = 512, label = "pinctrl-bcm2711"): void {
  control("reset", `chip ${label} ${base} 54`, `chip raspberrypi-exp-gpio ${base + 58} 8`);
}

export interface EmulatedChain {
  outputChipCount: number;
  inputChipCount: number;
  codeChipCount?: number;
  pins: ChainPins;
}

/** Puts a chain board behind the pins, with chance in its registers as after power-up. */
export function putChain({ outputChipCount, inputChipCount, codeChipCount = 0, pins }: EmulatedChain): void {
  const numbers = signals.map((signal) => pins[signal] ?? -1);
  control(`chain ${[outputChipCount, inputChipCount, codeChipCount, ...numbers].join(" ")}`);
}

/** Puts a board without chips behind the pins. */
export function putDirect(pins: readonly number[]): void {
  control(`direct ${pins.join(" ")}`);
}

/** Copper between two lines. */
export const join = (lineA: number, lineB: number): void => control(`join ${lineA} ${lineB}`);
export const part = (lineA: number, lineB: number): void => control(`part ${lineA} ${lineB}`);

/** The pins of the workshop board. */
export const workshopPins: ChainPins = {
  shiftClock: 11,
  dataOut: 10,
  latch: 8,
  load: 25,
  dataIn: 9,
  outputEnable: 24,
  codeIn: 23,
};
export const workshop = { pins: workshopPins, lineCount: 206, codeCount: 120 };

/** The workshop board with nothing plugged, on a fresh kernel. */
export function freshWorkshop(): void {
  freshKernel();
  putChain({ outputChipCount: 26, inputChipCount: 26, codeChipCount: 15, pins: workshopPins });
}

/** BCM 4 to 27: the Pi pulls 2 and 3 up, and 0 and 1 are for its identity chip. */
export const smallPins = [...Array(24).keys()].map((index) => index + 4);
