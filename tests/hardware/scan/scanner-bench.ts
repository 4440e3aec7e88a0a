import type { LineIndex } from "../../../hardware/lines/line-index.ts";
import type { Lines } from "../../../hardware/lines/lines.ts";
import { Scanner, type ScannerEvent } from "../../../hardware/scan/scanner.ts";
import type { SensedLines } from "../../../hardware/scan/sensed-lines.ts";

/** A scanner with a clock of its own that moves only as the scan does: no test waits. */
export class ScannerBench {
  readonly scanner: Scanner;
  nowMs = 0;
  /** Every event so far, with its time. */
  readonly events: { atMs: number; event: ScannerEvent }[] = [];
  last: SensedLines | undefined;

  constructor(
    readonly lines: Lines,
    /** How long one exchange takes. */
    readonly patternMs = 4,
  ) {
    this.scanner = new Scanner(lines);
    this.scanner.exchangeMs = patternMs;
  }

  step(): void {
    const { events, waitMs } = this.scanner.step(this.nowMs);
    for (const event of events) {
      this.events.push({ atMs: this.nowMs, event });
      if (event.type === "sensed") this.last = event.sensed;
    }
    this.nowMs += this.patternMs + waitMs;
  }

  run(forMs: number): this {
    for (const endMs = this.nowMs + forMs; this.nowMs < endMs;) this.step();
    return this;
  }

  /** Steps until `isSo`, and gives how many steps that took; gives up after 5,000. */
  stepsUntil(isSo: () => boolean): number {
    for (let steps = 0; steps < 5_000; steps += 1) {
      if (isSo()) return steps;
      this.step();
    }
    throw new Error("it never came to be so");
  }

  joins(...lines: LineIndex[]): boolean {
    return this.last?.groups.some((group) => lines.every((line) => group.includes(line))) ?? false;
  }

  unknownLines(): number[] {
    const unknown = this.last?.unknown ?? [];
    return [...unknown.keys()].filter((line) => unknown[line] === 1);
  }

  get decodeCount(): number {
    return this.scanner.fullDecodeCount + this.scanner.targetedDecodeCount;
  }
}
