import type { LineIndex } from "../../../hardware/lines/line-index.ts";
import type { LineReading, Lines } from "../../../hardware/lines/lines.ts";
import type { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";

/** What disturbs a board as a whole, or one line of it in a way that copper alone does not tell. */
export type Disturbance =
  /** A bit is read wrong in this share of readings: of one line, or of all. */
  | { kind: "noise"; share: number; line?: LineIndex }
  /** A clock of a chain is missed or doubled, so often a clock: all lines behind it stand one place off. */
  | { kind: "slip"; share: number; chain: "inputs" | "outputs" }
  /** A line let go is still read low for so long. */
  | { kind: "slow-rise"; riseMs: number; line: LineIndex }
  /** The diode of an output is bridged: released, it holds all that is joined to it high. */
  | { kind: "bypassed-diode"; line: LineIndex }
  /** The ribbon of a chip is in the wrong way round: its eight lines stand in the opposite order. */
  | { kind: "reversed"; chain: "inputs" | "outputs"; chip: number }
  /** Two chips of a chain stand in each other's place. */
  | { kind: "swapped"; chain: "inputs" | "outputs"; chips: readonly [number, number] }
  /** Two wires of a chain stand in each other's place. */
  | { kind: "crossed"; chain: "inputs" | "outputs"; lines: readonly [LineIndex, LineIndex] }
  /** All chips of a chain stand in the opposite order. */
  | { kind: "turned"; chain: "inputs" | "outputs" }
  /** These chips of a chain stay at one level: the inputs read so, the outputs pull (1) or never do (0). */
  | { kind: "held"; chain: "inputs" | "outputs"; chips: readonly [from: number, to: number]; bit: 0 | 1 }
  /** A diode between two lines: pulling the one pulls the other, and not the other way. */
  | { kind: "one-way"; from: LineIndex; to: LineIndex }
  /**
   * Two outputs are bridged before their diodes. Where one pulls and the other does not they fight, and the levels of
   * the chips decide: both are low, both high, both as the first is, or in between, where each reading is as it falls.
   */
  | { kind: "bridged-outputs"; lines: readonly [LineIndex, LineIndex]; wins: BridgeWinner };

export const bridgeWinners = ["low", "high", "first", "neither"] as const;
export type BridgeWinner = (typeof bridgeWinners)[number];

const chipLines = 8;

/** The simulated board behind chains and copper that are not as they should be. */
export class DisturbedLines implements Lines {
  readonly lineCount: number;
  readonly codeCount: number;
  disturbance: Disturbance | undefined;
  readonly #copper: SimulatedLines;
  readonly #random: () => number;
  readonly #nowMs: () => number;
  #pulled: Uint8Array;
  #lowUntilMs = 0;

  constructor(copper: SimulatedLines, random: () => number, nowMs: () => number) {
    this.#copper = copper;
    this.#random = random;
    this.#nowMs = nowMs;
    this.lineCount = copper.lineCount;
    this.codeCount = copper.codeCount;
    this.#pulled = new Uint8Array(copper.lineCount);
  }

  exchange(next: Uint8Array): LineReading {
    const pulled = this.#onBridge(this.#onChain("outputs", next));
    const { lines, codes } = this.#copper.exchange(pulled);
    const reading = this.#onChain("inputs", this.#onCopper(lines));
    this.#pulled = pulled;
    return { lines: reading, codes };
  }

  close(): void {
    this.#copper.close();
  }

  #onBridge(next: Uint8Array): Uint8Array {
    const how = this.disturbance;
    if (how?.kind !== "bridged-outputs") return next;
    const [one, other] = how.lines;
    const [first, second] = [next[one]!, next[other]!];
    if (first === second) return next;
    const asItFalls = (): number => (this.#random() < 0.5 ? 1 : 0);
    const pulled = next.slice();
    pulled[one] = { low: 1, high: 0, first, neither: asItFalls() }[how.wins];
    pulled[other] = how.wins === "neither" ? asItFalls() : pulled[one];
    return pulled;
  }

  #onCopper(lines: Uint8Array): Uint8Array {
    const how = this.disturbance;
    if (how?.kind === "noise")
      return lines.map((bit, line) =>
        (how.line === undefined || how.line === line) && this.#random() < how.share ? 1 - bit : bit,
      );
    if (how?.kind === "bypassed-diode") {
      const held = new Set<number>(this.#node(how.line));
      return lines.map((bit, line) => (held.has(line) ? this.#pulled[how.line]! : bit));
    }
    if (how?.kind === "slow-rise") {
      const nowMs = this.#nowMs();
      const held = new Set<number>(this.#node(how.line));
      if (lines[how.line] === 1) this.#lowUntilMs = nowMs + how.riseMs;
      return lines.map((bit, line) => (held.has(line) && nowMs < this.#lowUntilMs ? 1 : bit));
    }
    if (how?.kind === "one-way") {
      const behind = new Set<number>(lines[how.from] === 1 ? this.#node(how.to) : []);
      return lines.map((bit, line) => (behind.has(line) ? 1 : bit));
    }
    return lines;
  }

  /** All lines that hang together with one. */
  #node(line: LineIndex): LineIndex[] {
    const node = [line];
    for (const one of node)
      for (const other of this.#copper.joinedTo(one)) if (!node.includes(other)) node.push(other);
    return node;
  }

  #onChain(chain: "inputs" | "outputs", bits: Uint8Array): Uint8Array {
    const how = this.disturbance;
    if (how === undefined || !("chain" in how) || how.chain !== chain) return bits;
    if (how.kind === "held") {
      const [first, last] = how.chips;
      const isHeld = (line: number): boolean =>
        line >= first * chipLines && line < (last + 1) * chipLines && line < bits.length;
      return bits.map((bit, line) => (isHeld(line) ? how.bit : bit));
    }
    const from = how.kind === "slip" ? this.#slipped(how.share) : placed(how, this.lineCount);
    return bits.map((_bit, line) => bits[from(line)] ?? 0);
  }

  /** Whether a clock slipped this time, at which place, and which way. */
  #slipped(share: number): (line: number) => number {
    const clocks = chipLines * Math.ceil(this.lineCount / chipLines);
    if (this.#random() >= 1 - (1 - share) ** clocks) return (line) => line;
    const place = Math.floor(this.#random() * this.lineCount);
    const off = this.#random() < 0.5 ? 1 : -1;
    return (line) => (line < place ? line + off : line);
  }
}

type Misplaced = Extract<Disturbance, { kind: "reversed" | "swapped" | "crossed" | "turned" }>;

function placed(how: Misplaced, lineCount: number): (line: number) => number {
  const chipOf = (line: number): number => Math.floor(line / chipLines);
  if (how.kind === "crossed") {
    const [one, other] = how.lines;
    return (line) => (line === one ? other : line === other ? one : line);
  }
  if (how.kind === "turned") {
    const lastChip = Math.ceil(lineCount / chipLines) - 1;
    return (line) => chipLines * (lastChip - chipOf(line)) + (line % chipLines);
  }
  if (how.kind === "reversed")
    return (line) =>
      chipOf(line) === how.chip ? chipLines * how.chip + chipLines - 1 - (line % chipLines) : line;
  const [one, other] = how.chips;
  const moved = new Map([
    [one, other],
    [other, one],
  ]);
  return (line) => chipLines * (moved.get(chipOf(line)) ?? chipOf(line)) + (line % chipLines);
}
