import type { LineIndex } from "./line-index.ts";
import type { LineReading, Lines } from "./lines.ts";

/** What can be wrong with one line of the mock board. */
export type LineFault = "stuck-low" | "stuck-high" | "dead-output" | "dead-input" | "loose-contact";

/** A loose contact is open or closed for this many exchanges at a stretch. */
const looseStretchExchanges = 7;

/**
 * The mock board in software: leads as copper between lines, pull-ups, outputs that can only pull, and inputs.
 * A line reads low when any line joined to it is pulled, whether or not the leads make sense. Faults follow
 * their cause: a stuck line takes its whole group with it, a dead output or input only itself, and two tied
 * outputs pull together though their lines are apart.
 */
export class SimulatedLines implements Lines {
  readonly lineCount: number;
  readonly codeCount: number;
  /** Exchanges since it was made: one pattern each. */
  exchangeCount = 0;
  /** True once closed. */
  isClosed = false;

  #pulled: Uint8Array;
  readonly #codes: Uint8Array;
  readonly #joins: Set<LineIndex>[];
  readonly #faults = new Map<LineIndex, LineFault>();
  #ties: [LineIndex, LineIndex][] = [];
  #noise: { share: number; random: () => number } | undefined;
  #nodes: Int32Array | undefined;
  #loosePhase = -1;

  constructor(lineCount: number, codeCount = 0) {
    this.lineCount = lineCount;
    this.codeCount = codeCount;
    this.#pulled = new Uint8Array(lineCount);
    this.#codes = new Uint8Array(codeCount);
    this.#joins = Array.from({ length: lineCount }, () => new Set<LineIndex>());
  }

  exchange(next: Uint8Array): LineReading {
    const reading = { lines: this.#read(), codes: this.#codes.slice() };
    this.#pulled = next.slice();
    this.exchangeCount += 1;
    return reading;
  }

  close(): void {
    this.#pulled.fill(0);
    this.isClosed = true;
  }

  join(lineA: LineIndex, lineB: LineIndex): void {
    this.#joins[lineA]?.add(lineB);
    this.#joins[lineB]?.add(lineA);
    this.#nodes = undefined;
  }

  part(lineA: LineIndex, lineB: LineIndex): void {
    this.#joins[lineA]?.delete(lineB);
    this.#joins[lineB]?.delete(lineA);
    this.#nodes = undefined;
  }

  /** The lines that a lead joins directly to `line`. */
  joinedTo(line: LineIndex): LineIndex[] {
    return [...(this.#joins[line] ?? [])];
  }

  /** Gives a line a fault, or with `null` mends it. */
  setFault(line: LineIndex, fault: LineFault | null): void {
    if (fault === null) this.#faults.delete(line);
    else this.#faults.set(line, fault);
    this.#nodes = undefined;
  }

  /** Ties two outputs together before their diodes: pulling either pulls both lines. */
  tieOutputs(lineA: LineIndex, lineB: LineIndex): void {
    this.#ties.push([lineA, lineB]);
  }

  /** From now on each input bit is read wrong in this share of readings, 0 to 1. */
  setNoise(share: number, random: () => number): void {
    this.#noise = { share, random };
  }

  /** Parts all tied outputs. */
  untieOutputs(): void {
    this.#ties = [];
  }

  /** A plug straps a code contact to 0 V, or opens it again. */
  setCode(codeIndex: number, isStrapped: boolean): void {
    this.#codes[codeIndex] = isStrapped ? 1 : 0;
  }

  isStrapped(codeIndex: number): boolean {
    return this.#codes[codeIndex] === 1;
  }

  /** The lines whose output pulls now, dead outputs left out. */
  pulledLines(): LineIndex[] {
    return [...this.#pulling().keys()].filter((line) => this.#pulling()[line] === 1) as LineIndex[];
  }

  #pulling(): Uint8Array {
    if (this.#ties.length === 0 && this.#faults.size === 0) return this.#pulled;
    const pulling = this.#pulled.slice();
    for (const [lineA, lineB] of this.#ties)
      if (this.#pulled[lineA] === 1 || this.#pulled[lineB] === 1) pulling[lineA] = pulling[lineB] = 1;
    for (const [line, fault] of this.#faults) if (fault === "dead-output") pulling[line] = 0;
    return pulling;
  }

  #read(): Uint8Array {
    const nodes = this.#nodesNow();
    const { lineCount } = this;
    const isLow = new Uint8Array(lineCount);
    const pulling = this.#pulling();
    for (let line = 0; line < lineCount; line += 1) if (pulling[line] === 1) isLow[nodes[line]!] = 1;
    // A short to the supply beats an output's series resistor; a short to 0 V beats everything.
    for (const [line, fault] of this.#faults) if (fault === "stuck-high") isLow[nodes[line]!] = 0;
    for (const [line, fault] of this.#faults) if (fault === "stuck-low") isLow[nodes[line]!] = 1;
    const reading = new Uint8Array(lineCount);
    for (let line = 0; line < lineCount; line += 1) reading[line] = isLow[nodes[line]!]!;
    for (const [line, fault] of this.#faults) if (fault === "dead-input") reading[line] = 0;
    const { share, random } = this.#noise ?? { share: 0, random: () => 1 };
    return share === 0 ? reading : reading.map((bit) => (random() < share ? 1 - bit : bit));
  }

  /** For every line the least line of its node, with loose contacts as they stand at this exchange. */
  #nodesNow(): Int32Array {
    const phase = Math.floor(this.exchangeCount / looseStretchExchanges);
    const hasLoose = this.#faults.size > 0 && [...this.#faults.values()].includes("loose-contact");
    if (this.#nodes !== undefined && (!hasLoose || phase === this.#loosePhase)) return this.#nodes;
    this.#loosePhase = phase;
    const nodes = new Int32Array(this.lineCount).fill(-1);
    for (let start = 0; start < this.lineCount; start += 1) {
      if (nodes[start] !== -1) continue;
      const waiting = [start as LineIndex];
      nodes[start] = start;
      for (let line = waiting.pop(); line !== undefined; line = waiting.pop()) {
        if (this.#isOpen(line)) continue;
        for (const other of this.#joins[line]!) {
          if (nodes[other] !== -1 || this.#isOpen(other)) continue;
          nodes[other] = start;
          waiting.push(other);
        }
      }
    }
    return (this.#nodes = nodes);
  }

  #isOpen(line: LineIndex): boolean {
    return this.#faults.get(line) === "loose-contact" && isLooseOpen(line, this.#loosePhase);
  }
}

/** Whether a loose contact is open in a stretch: an even mix with no rhythm, the same on every run. */
function isLooseOpen(line: number, phase: number): boolean {
  let mixed = (line * 0x9e3779b1 + phase * 0x85ebca6b) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
  mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39);
  return ((mixed ^ (mixed >>> 15)) & 1) === 1;
}
