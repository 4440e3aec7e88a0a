import type { ChainPins } from "../../../hardware/lines/chain-lines.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";

type Level = 0 | 1;

/** What the pins of a header are joined to. */
export interface BoardBehindPins {
  readonly copper: SimulatedLines;
  /** A pin is driven to a level from now on, or by nobody. */
  drive(bcm: number, level: Level | undefined): void;
  levelAt(bcm: number): Level;
}

/** Eight-bit registers of 595 outputs and 165 inputs, edge by edge as the data sheets have them. */
export class ChainBehindPins implements BoardBehindPins {
  readonly copper: SimulatedLines;
  readonly #signalAt: ReadonlyMap<number, keyof ChainPins>;
  readonly #level: Record<string, Level> = { outputEnable: 1, load: 1 };
  readonly #outputs: Level[];
  readonly #inputs: Level[];
  readonly #codes: Level[];
  #latched: Level[];

  constructor(
    pins: ChainPins,
    lineCount: number,
    codeCount: number,
    copper = new SimulatedLines(lineCount, codeCount),
  ) {
    this.copper = copper;
    this.#signalAt = new Map(
      Object.entries(pins).map(([signal, bcm]) => [bcm as number, signal as keyof ChainPins]),
    );
    const registers = (count: number): Level[] => new Array<Level>(8 * Math.ceil(count / 8)).fill(0);
    // What stands in registers at power-up is anything: here every output would pull.
    [this.#outputs, this.#inputs, this.#latched] = [lineCount, lineCount, lineCount].map(registers) as [
      Level[],
      Level[],
      Level[],
    ];
    this.#codes = registers(codeCount);
  }

  drive(bcm: number, level: Level | undefined): void {
    const signal = this.#signalAt.get(bcm);
    if (signal === undefined) return;
    const now = level ?? (signal === "outputEnable" || signal === "load" ? 1 : 0);
    const isRising = now === 1 && this.#level[signal] !== 1;
    this.#level[signal] = now;
    if (signal === "shiftClock" && isRising) this.#shift();
    if (signal === "latch" && isRising) this.#latched = [...this.#outputs];
    if (signal === "load" && now === 0) this.#takeIn();
    this.#pull();
  }

  levelAt(bcm: number): Level {
    const signal = this.#signalAt.get(bcm);
    if (signal === "dataIn") return this.#inputs.at(-1) ?? 0;
    if (signal === "codeIn") return this.#codes.at(-1) ?? 0;
    return (signal && this.#level[signal]) ?? 0;
  }

  #shift(): void {
    const tied = this.#outputs.at(-1) ?? 0;
    this.#inputs.unshift(tied);
    this.#codes.unshift(1);
    this.#outputs.unshift(this.#level["dataOut"] ?? 0);
    for (const register of [this.#inputs, this.#codes, this.#outputs]) register.pop();
  }

  #takeIn(): void {
    const { lines, codes } = this.#exchange();
    this.#inputs.forEach((_, at) => (this.#inputs[at] = lines[at] === 1 ? 0 : 1));
    this.#codes.forEach((_, at) => (this.#codes[at] = codes[at] === 1 ? 0 : 1));
  }

  #pull(): void {
    this.#exchange();
  }

  #exchange(): { lines: Uint8Array; codes: Uint8Array } {
    const isOn = this.#level["outputEnable"] === 0;
    return this.copper.exchange(
      Uint8Array.from({ length: this.copper.lineCount }, (_, line) =>
        isOn && this.#latched[line] === 0 ? 1 : 0,
      ),
    );
  }
}

/** A board without chips: each pin is a line with a pull-up. */
export class BareBehindPins implements BoardBehindPins {
  readonly copper: SimulatedLines;
  readonly #pulled: Uint8Array;

  constructor(
    readonly pins: readonly number[],
    copper = new SimulatedLines(pins.length),
  ) {
    this.copper = copper;
    this.#pulled = new Uint8Array(pins.length);
  }

  drive(bcm: number, level: Level | undefined): void {
    const line = this.pins.indexOf(bcm);
    if (line < 0) return;
    this.#pulled[line] = level === 0 ? 1 : 0;
    this.copper.exchange(this.#pulled);
  }

  levelAt(bcm: number): Level {
    const { lines } = this.copper.exchange(this.#pulled);
    return lines[lineIndex(this.pins.indexOf(bcm))] === 1 ? 0 : 1;
  }
}
