import { afterEach, describe, expect, it } from "vitest";
import type { Lines } from "../../../hardware/lines/lines.ts";

type Awaitable<T> = T | Promise<T>;

/**
 * A board under test: its maker's lines, and hands to work on the copper behind them. The hands may take their
 * time (an emulated sysfs lives in another process); the lines may not.
 */
export interface LinesBench {
  lines: Lines;
  /** Joins two lines by a lead. */
  join: (lineA: number, lineB: number) => Awaitable<void>;
  /** Takes that lead out. */
  part: (lineA: number, lineB: number) => Awaitable<void>;
  /** Straps code contact `codeIndex` to 0 V (true) or opens it. Left out on boards without codes. */
  setCode?: (codeIndex: number, isStrapped: boolean) => Awaitable<void>;
  /** The lines whose output pulls at this moment, as the board itself sees it. */
  pulledLines: () => Awaitable<number[]>;
  /** Takes the bench down after each test. */
  tearDown?: () => Awaitable<void>;
}

const pattern = (lines: Lines, pulled: readonly number[]): Uint8Array => {
  const next = new Uint8Array(lines.lineCount);
  for (const line of pulled) next[line] = 1;
  return next;
};

const low = (reading: Uint8Array): number[] => [...reading.keys()].filter((index) => reading[index] === 1);

/** Pulls exactly `pulled`, lets go again, and gives the lines that read low in between. */
const lowUnder = (lines: Lines, pulled: readonly number[]): number[] => {
  lines.exchange(pattern(lines, pulled));
  return low(lines.exchange(pattern(lines, [])).lines);
};

const range = (count: number): number[] => Array.from({ length: count }, (_, index) => index);

/**
 * The promises that every maker of Lines keeps; each maker's test file calls this once. `make` is called for
 * every test and gives a board with no lead in it and at least eight lines.
 */
export function linesContract(name: string, make: () => Awaitable<LinesBench>): void {
  describe(`${name} keeps the promises of lines`, () => {
    let bench: LinesBench | undefined;
    const open = async (): Promise<LinesBench> => (bench = await make());

    afterEach(async () => {
      bench?.lines.close();
      await bench?.tearDown?.();
      bench = undefined;
    });

    it("pulls nothing before it is asked to", async () => {
      const { lines, pulledLines } = await open();
      expect(lines.lineCount).toBeGreaterThanOrEqual(8);
      expect(await pulledLines()).toEqual([]);
      const reading = lines.exchange(pattern(lines, []));
      expect(reading.lines).toHaveLength(lines.lineCount);
      expect(reading.codes).toHaveLength(lines.codeCount);
      expect(low(reading.lines)).toEqual([]);
    });

    it("pulls exactly the lines of the pattern, each one in its own place", async () => {
      const { lines, pulledLines } = await open();
      for (const line of range(lines.lineCount)) {
        lines.exchange(pattern(lines, [line]));
        expect(await pulledLines()).toEqual([line]);
      }
    });

    it("reads on an empty board exactly the lines that are pulled", async () => {
      const { lines } = await open();
      for (const line of range(lines.lineCount)) expect(lowUnder(lines, [line])).toEqual([line]);
      const even = range(lines.lineCount).filter((line) => line % 2 === 0);
      expect(lowUnder(lines, even)).toEqual(even);
      expect(lowUnder(lines, range(lines.lineCount))).toEqual(range(lines.lineCount));
    });

    it("gives the reading under the pattern before, not under the new one", async () => {
      const { lines } = await open();
      const last = lines.lineCount - 1;
      expect(low(lines.exchange(pattern(lines, [0])).lines)).toEqual([]);
      expect(low(lines.exchange(pattern(lines, [1, last])).lines)).toEqual([0]);
      expect(low(lines.exchange(pattern(lines, [2])).lines)).toEqual([1, last]);
      expect(low(lines.exchange(pattern(lines, [])).lines)).toEqual([2]);
      expect(low(lines.exchange(pattern(lines, [])).lines)).toEqual([]);
    });

    it("sees joins made after a pattern was pulled and before it is read", async () => {
      const { lines, join } = await open();
      lines.exchange(pattern(lines, [3]));
      await join(3, 6);
      expect(low(lines.exchange(pattern(lines, [])).lines)).toEqual([3, 6]);
    });

    it("reads a line low when any line joined to it is pulled", async () => {
      const { lines, join } = await open();
      const last = lines.lineCount - 1;
      await join(0, last);
      await join(2, 5);
      await join(5, 6);
      expect(lowUnder(lines, [0])).toEqual([0, last]);
      expect(lowUnder(lines, [last])).toEqual([0, last]);
      expect(lowUnder(lines, [2])).toEqual([2, 5, 6]);
      expect(lowUnder(lines, [6, last])).toEqual([0, 2, 5, 6, last]);
      expect(lowUnder(lines, [1, 4])).toEqual([1, 4]);
      expect(lowUnder(lines, [])).toEqual([]);
    });

    it("reads a lead that was taken out as gone", async () => {
      const { lines, join, part } = await open();
      await join(1, 4);
      await join(4, 6);
      expect(lowUnder(lines, [1])).toEqual([1, 4, 6]);
      await part(1, 4);
      expect(lowUnder(lines, [1])).toEqual([1]);
      expect(lowUnder(lines, [6])).toEqual([4, 6]);
    });

    it("keeps a reading as it was when a later one is taken", async () => {
      const { lines } = await open();
      lines.exchange(pattern(lines, [0]));
      const first = lines.exchange(pattern(lines, [1]));
      const second = lines.exchange(pattern(lines, []));
      expect(low(first.lines)).toEqual([0]);
      expect(low(second.lines)).toEqual([1]);
    });

    it("does not look at the pattern again after the call", async () => {
      const { lines } = await open();
      const next = pattern(lines, [2]);
      lines.exchange(next);
      next.fill(1);
      expect(low(lines.exchange(pattern(lines, [])).lines)).toEqual([2]);
    });

    it("reads the code contacts that a plug straps, when nothing is pulled", async () => {
      const { lines, setCode } = await open();
      if (setCode === undefined) {
        expect(lines.codeCount).toBe(0);
        return;
      }
      const codesNow = (): number[] => {
        lines.exchange(pattern(lines, []));
        return low(lines.exchange(pattern(lines, [])).codes);
      };
      const last = lines.codeCount - 1;
      expect(codesNow()).toEqual([]);
      await setCode(0, true);
      await setCode(last, true);
      expect(codesNow()).toEqual([0, last]);
      await setCode(0, false);
      expect(codesNow()).toEqual([last]);
      expect(lowUnder(lines, [])).toEqual([]);
    });

    it("releases every line when it is closed, and may be closed twice", async () => {
      const { lines, pulledLines } = await open();
      lines.exchange(pattern(lines, range(lines.lineCount)));
      expect(await pulledLines()).toHaveLength(lines.lineCount);
      lines.close();
      expect(await pulledLines()).toEqual([]);
      expect(() => lines.close()).not.toThrow();
    });
  });
}
