import { type LineIndex, lineIndex } from "../../hardware/lines/line-index.ts";
import { Scanner } from "../../hardware/scan/scanner.ts";
import { SimulatedLines } from "../../hardware/lines/simulated-lines.ts";
import { SpinningLines } from "../../hardware/lines/spinning-lines.ts";
import { judge } from "../../shared/rules/judge.ts";
import { shuffled } from "../hardware/scan/random-copper.ts";
import { seeded } from "../seeded.ts";
import { fullBoard } from "./judge-speed.ts";
import { ms, quantile, type SpeedLine } from "./speed-line.ts";

const turns = 12;
const now = (): number => performance.now();

/** Waits as the scanner asks, to the fraction: a timer of the machine would round it. */
const spinFor = (waitMs: number): void => {
  for (const endMs = now() + waitMs; now() < endMs;);
};

/**
 * Milliseconds from a lead going in at a random moment to the sensed state that holds it and the verdict on a
 * full board, on a chain whose GPIO calls take so long. Half of the lines are joined in pairs before.
 */
const contactToVerdictMs = (lineCount: number, spinUs: number, random: () => number): number[] => {
  const inner = new SimulatedLines(lineCount);
  const order = shuffled(lineCount, random).map(lineIndex);
  const pairs = Array.from({ length: Math.floor(lineCount / 2) }, (_, index): [LineIndex, LineIndex] => [
    order[2 * index] as LineIndex,
    order[2 * index + 1] as LineIndex,
  ]);
  const [free, joined] = [pairs.slice(0, pairs.length / 2), pairs.slice(pairs.length / 2)];
  for (const [a, b] of joined) inner.join(a, b);
  const scanner = new Scanner(new SpinningLines(inner, spinUs, now));
  const step = (isThere?: (groups: LineIndex[][]) => boolean): boolean => {
    const { events, waitMs } = scanner.step(now());
    const isSeen = events.some((event) => event.type === "sensed" && isThere?.(event.sensed.groups) === true);
    if (!isSeen) spinFor(waitMs);
    return isSeen;
  };
  const settle = (): void => {
    for (let steps = 0; steps < 60; steps += 1) step();
  };
  settle();
  const wiring = fullBoard(random);
  return Array.from({ length: turns }, (_, turn) => {
    const [a, b] = free[turn % free.length] as [LineIndex, LineIndex];
    for (let steps = Math.floor(random() * 10); steps > 0; steps -= 1) step();
    const start = now();
    inner.join(a, b);
    while (!step((groups) => groups.some((group) => group.includes(a) && group.includes(b))));
    judge(wiring);
    const tookMs = now() - start;
    inner.part(a, b);
    settle();
    return tookMs;
  });
};

/** Share of a core that the exchanges with a board of 206 lines take, in use or after a minute without a change. */
const shareOfCore = (spinUs: number, isAtRest: boolean): number => {
  const scanner = new Scanner(new SpinningLines(new SimulatedLines(206), spinUs, now));
  const turnsOf = (count: number, aheadMs: number): number => {
    const [startMs, waited] = [now(), { ms: 0 }];
    for (let turn = 0; turn < count; turn += 1) {
      const stepMs = now();
      const { waitMs } = scanner.step(stepMs + aheadMs);
      scanner.exchangeMs = now() - stepMs;
      waited.ms += waitMs;
    }
    const workedMs = now() - startMs;
    return workedMs / (workedMs + waited.ms);
  };
  turnsOf(60, 0);
  return turnsOf(100, isAtRest ? 120_000 : 0);
};

/** Contact to verdict without the browser, as boards grow; the bench's own line has the browser in it. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const random = seeded(seed);
  const shares = [false, true].map((isAtRest): SpeedLine => {
    const [share, most] = [shareOfCore(6, isAtRest), isAtRest ? 0.1 : 0.6];
    return {
      what: `share of a core, 206 lines, 6 µs a GPIO call, ${isAtRest ? "at rest" : "in use"}`,
      reached: `${(100 * share).toFixed(1)} %`,
      target: `${100 * most} %`,
      ok: share < most,
    };
  });
  const contacts = [6, 12].flatMap((spinUs) =>
    [24, 64, 128, 206, 512].map((lineCount): SpeedLine => {
      const samples = contactToVerdictMs(lineCount, spinUs, random);
      const [median, late] = [quantile(samples, 0.5), quantile(samples, 0.95)];
      const isTarget = spinUs === 6 && lineCount <= 206;
      return {
        what: `contact to verdict, ${lineCount} lines, ${spinUs} µs a GPIO call: median, p95`,
        reached: `${ms(median)}, ${ms(late)}`,
        target: isTarget ? "100 ms, 150 ms" : "said, no target",
        ok: !isTarget || (median <= 100 && late <= 150),
      };
    }),
  );
  return [...shares, ...contacts];
};
