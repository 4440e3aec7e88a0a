import { describe, expect, it, vi } from "vitest";
import { type LineIndex, lineIndex as line } from "../../../hardware/lines/line-index.ts";
import type { Lines } from "../../../hardware/lines/lines.ts";
import { DisturbedLines } from "./disturbed-lines.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { byLeast, randomGroups, shuffled, wiredBoard } from "./random-copper.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";
import { ScannerBench } from "./scanner-bench.ts";

vi.setConfig({ testTimeout: 60_000 * testDepth });

const median = (values: number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

function wiredBench(
  seed: number,
  lineCount = 206,
  pairCount = 90,
): { lines: SimulatedLines; free: LineIndex[]; pairs: LineIndex[][]; bench: ScannerBench } {
  const random = seeded(seed);
  const pairs = randomGroups(lineCount, new Array<number>(pairCount).fill(2), random);
  const lines = wiredBoard(lineCount, pairs, random);
  const free = shuffled(lineCount, random).filter((each) => !pairs.flat().includes(each));
  const bench = new ScannerBench(lines);
  bench.stepsUntil(() => bench.last !== undefined);
  for (let steps = Math.floor(random() * 20); steps > 0; steps -= 1) bench.step();
  return { lines, free, pairs, bench };
}

describe("the scanner on a board at rest", () => {
  it("tells what is plugged at the start, once, and again when it is settled", () => {
    const { bench, pairs } = wiredBench(1);
    bench.run(5_000);
    expect(bench.events.map(({ event }) => event.type === "sensed" && event.sensed.isSettled)).toEqual([
      false,
      true,
    ]);
    expect(bench.last?.groups).toEqual(byLeast(pairs));
    expect(bench.events[1]!.atMs - bench.events[0]!.atMs).toBeGreaterThanOrEqual(400);
    expect(bench.events[1]!.atMs - bench.events[0]!.atMs).toBeLessThan(420);
  });

  it("takes no decode while nothing changes", () => {
    const { bench } = wiredBench(2);
    const before = bench.decodeCount;
    bench.run(20_000);
    expect(bench.decodeCount).toBe(before);
  });

  it("looks twice at a bit that was read wrong once: nothing is told, and the board is not decoded anew", () => {
    const { lines } = wiredBench(2);
    let wrongAt: number | undefined;
    const stray: Lines = {
      lineCount: lines.lineCount,
      codeCount: 0,
      exchange: (next) => {
        const reading = lines.exchange(next);
        if (wrongAt !== undefined) reading.lines[wrongAt] = 1 - reading.lines[wrongAt]!;
        wrongAt = undefined;
        return reading;
      },
      close: () => undefined,
    };
    const bench = new ScannerBench(stray).run(2_000);
    const [events, decodes] = [bench.events.length, bench.scanner.fullDecodeCount];
    for (let at = 0; at < lines.lineCount; at += 1) {
      wrongAt = at;
      bench.run(1_500);
    }
    expect(bench.events).toHaveLength(events);
    expect(bench.scanner.fullDecodeCount).toBe(decodes);
    expect(bench.scanner.targetedDecodeCount).toBeGreaterThanOrEqual(lines.lineCount);
  });

  it("takes under a tenth of a core after a minute without a change, and is awake again after one", () => {
    const { bench, lines, free } = wiredBench(3);
    const inUse = bench.scanner.patternCount;
    bench.run(10_000);
    expect((bench.scanner.patternCount - inUse) * bench.patternMs).toBeLessThan(6_000);
    bench.run(51_000);
    const before = bench.scanner.patternCount;
    bench.run(10_000);
    expect((bench.scanner.patternCount - before) * bench.patternMs).toBeLessThan(1_000);
    lines.join(free[0]!, free[1]!);
    bench.stepsUntil(() => bench.joins(free[0]!, free[1]!));
    const awake = bench.scanner.patternCount;
    bench.run(1_000);
    expect(bench.scanner.patternCount - awake).toBeGreaterThan(100);
  });

  // 206 lines take some 650 calls a pattern: 1.5 ms at 2.3 µs a call, 4 ms at the 6 µs of a slow board computer.
  it.each([
    { patternMs: 1.5, within150: 60 },
    { patternMs: 4, within150: 51 },
  ])(
    "senses the first lead after a minute of rest within 150 ms at $patternMs ms a pattern: $within150 of 60",
    ({ patternMs, within150 }) => {
      const random = seeded(8);
      const lines = new SimulatedLines(206);
      const bench = new ScannerBench(lines, patternMs).run(1_000);
      const tookMs = Array.from({ length: 60 }, () => {
        const [a, b] = shuffled(206, random).map(line) as [LineIndex, LineIndex];
        bench.nowMs += 61_000;
        bench.run(500 + random() * 100);
        lines.join(a, b);
        const startMs = bench.nowMs;
        bench.stepsUntil(() => bench.joins(a, b));
        const took = bench.events.at(-1)!.atMs - startMs;
        lines.part(a, b);
        bench.stepsUntil(() => !bench.joins(a, b));
        return took;
      });
      expect(tookMs.filter((ms) => ms <= 150).length).toBeGreaterThanOrEqual(within150);
      // Eight patterns tell any two lines apart.
      expect(Math.max(...tookMs)).toBeLessThan(8 * patternMs * 10.6 + 20 * patternMs);
    },
  );

  it.each(["stuck-low", "stuck-high", "dead-output", "dead-input"] as const)(
    "takes no decode for a line that is %s, wired or free",
    (fault) => {
      for (const wired of [true, false]) {
        const { lines, pairs, free } = wiredBench(4);
        lines.setFault(wired ? pairs[0]![0]! : free[0]!, fault);
        const bench = new ScannerBench(lines).run(1_000);
        const before = bench.decodeCount;
        bench.run(10_000);
        expect(bench.decodeCount).toBe(before);
        expect(bench.last?.health.filter((health) => health !== "healthy").length).toBeGreaterThan(0);
      }
    },
  );
});

describe("the watch", () => {
  it("notices a new lead between free contacts after about 2 patterns, and after 7 at the latest", () => {
    const counts = Array.from({ length: 60 * testDepth }, (_, seed) => {
      const { lines, free, bench } = wiredBench(seed);
      const groupCount = 206 - 90;
      lines.join(free[0]!, free[1]!);
      const before = bench.scanner.targetedDecodeCount;
      const steps = bench.stepsUntil(() => bench.scanner.targetedDecodeCount > before);
      expect(steps).toBeLessThanOrEqual(Math.ceil(Math.log2(groupCount + 1)));
      return steps;
    });
    expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThan(2.5);
  });

  it("notices a lead that was pulled after about 2 patterns, and after 7 at the latest", () => {
    const counts = Array.from({ length: 60 * testDepth }, (_, seed) => {
      const { lines, pairs, bench } = wiredBench(seed);
      lines.part(pairs[0]![0]!, pairs[0]![1]!);
      const before = bench.scanner.targetedDecodeCount;
      const steps = bench.stepsUntil(() => bench.scanner.targetedDecodeCount > before);
      expect(steps).toBeLessThanOrEqual(7);
      return steps;
    });
    expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThan(2.5);
  });
});

describe("the scanner when one lead changes", () => {
  it("senses a new lead in some 11 patterns without decoding the whole board", () => {
    const counts = Array.from({ length: 60 * testDepth }, (_, seed) => {
      const { lines, free, bench } = wiredBench(seed);
      const before = bench.scanner.fullDecodeCount;
      lines.join(free[0]!, free[1]!);
      const steps = bench.stepsUntil(() => bench.joins(free[0]!, free[1]!));
      expect(bench.scanner.fullDecodeCount).toBe(before);
      return steps;
    });
    expect(median(counts)).toBeLessThanOrEqual(11);
    expect(Math.max(...counts)).toBeLessThanOrEqual(16);
  });

  it("senses a pulled lead in some 11 patterns without decoding the whole board", () => {
    const counts = Array.from({ length: 60 * testDepth }, (_, seed) => {
      const { lines, pairs, bench } = wiredBench(seed);
      const before = bench.scanner.fullDecodeCount;
      const [a, b] = pairs[0] as [LineIndex, LineIndex];
      lines.part(a, b);
      const steps = bench.stepsUntil(() => !bench.joins(a, b));
      expect(bench.scanner.fullDecodeCount).toBe(before);
      return steps;
    });
    expect(median(counts)).toBeLessThanOrEqual(11);
  });

  it("tells no state in between that was never there", () => {
    for (let seed = 0; seed < 25 * testDepth; seed += 1) {
      const { lines, free, bench } = wiredBench(seed);
      const before = bench.last!.groups.length;
      const told = bench.events.length;
      lines.join(free[0]!, free[1]!);
      bench.run(1_000);
      const sensed = bench.events
        .slice(told)
        .flatMap(({ event }) => (event.type === "sensed" ? [event.sensed] : []));
      expect(sensed.map(({ groups }) => groups.length)).toEqual(sensed.map(() => before + 1));
      expect(sensed.at(-1)?.isSettled).toBe(true);
    }
  });

  it("senses a cable whose three cores make contact 30 ms apart within 100 ms of the last", () => {
    for (let seed = 0; seed < 25 * testDepth; seed += 1) {
      const { lines, free, bench } = wiredBench(seed);
      for (let core = 0; core < 3; core += 1) {
        lines.join(free[2 * core]!, free[2 * core + 1]!);
        if (core < 2) bench.run(30);
      }
      bench.run(120);
      for (let core = 0; core < 3; core += 1)
        expect([seed, core, bench.joins(free[2 * core]!, free[2 * core + 1]!)]).toEqual([seed, core, true]);
      bench.run(2_000);
      expect(new Set(bench.last?.health)).toEqual(new Set(["healthy"]));
    }
  });

  it("is settled only when nothing changed for 400 ms", () => {
    const { lines, free, bench } = wiredBench(5);
    bench.run(1_000);
    lines.join(free[0]!, free[1]!);
    bench.run(300);
    expect(bench.last?.isSettled).toBe(false);
    lines.join(free[2]!, free[3]!);
    bench.run(300);
    expect(bench.last?.isSettled).toBe(false);
    bench.run(300);
    expect(bench.last?.isSettled).toBe(true);
  });
});

describe("the scanner on a board where hands are at work", () => {
  it("comes to sense what is there, after any row of changes, with any line bad", () => {
    for (let seed = 0; seed < 40 * testDepth; seed += 1) {
      const random = seeded(seed);
      const lineCount = 8 + Math.floor(random() * 60);
      const lines = new SimulatedLines(lineCount);
      const bench = new ScannerBench(lines);
      const faults = ["stuck-low", "stuck-high", "dead-output", "dead-input", null] as const;
      const bad = line(Math.floor(random() * lineCount));
      const leads: [LineIndex, LineIndex][] = [];
      for (let change = 0; change < 30; change += 1) {
        if (leads.length > 0 && random() < 0.4) {
          const [a, b] = leads.splice(Math.floor(random() * leads.length), 1)[0]!;
          lines.part(a, b);
        } else {
          const [a, b] = shuffled(lineCount, random) as [LineIndex, LineIndex];
          if (leads.some(([c, d]) => (a === c && b === d) || (a === d && b === c))) continue;
          lines.join(a, b);
          leads.push([a, b]);
        }
        if (random() < 0.1) lines.setFault(bad, faults[Math.floor(random() * 5)]!);
        bench.run(random() < 0.3 ? random() * 60 : random() * 400);
      }
      bench.run(4_000);
      const copper = copperGroups(lines);
      const unknown = new Set(bench.unknownLines());
      for (let each = line(0); each < lineCount; each = line(each + 1)) {
        if (unknown.has(each)) continue;
        const sensed = bench.last!.groups.find((group) => group.includes(each)) ?? [each];
        expect([seed, sensed]).toEqual([seed, copper.get(each)]);
      }
      for (const each of unknown)
        expect([seed, copper.get(line(each))]).toEqual([seed, expect.arrayContaining([bad])]);
    }
  });

  const copperGroups = (lines: SimulatedLines): Map<LineIndex, LineIndex[]> => {
    const groups = new Map<LineIndex, LineIndex[]>();
    for (let each = line(0); each < lines.lineCount; each = line(each + 1)) {
      const reached = new Set([each]);
      for (const one of reached) lines.joinedTo(one).forEach((other) => reached.add(other));
      groups.set(
        each,
        [...reached].sort((a, b) => a - b),
      );
    }
    return groups;
  };
});

describe("a loose contact", () => {
  /** A lead whose one end comes and goes every `everyMs`. */
  const shake = (
    bench: ScannerBench,
    lines: SimulatedLines,
    a: LineIndex,
    b: LineIndex,
    everyMs: number,
    forMs: number,
  ): void => {
    for (let turn = 0; turn * everyMs < forMs; turn += 1) {
      if (turn % 2 === 0) lines.part(a, b);
      else lines.join(a, b);
      bench.run(everyMs);
    }
  };

  it.each([60, 100, 150])(
    "that comes and goes every %i ms is unknown, named, and gets 5 decodes a second",
    (everyMs) => {
      const { lines, pairs, bench } = wiredBench(6);
      const [a, b] = pairs[0] as [LineIndex, LineIndex];
      bench.run(1_000);
      shake(bench, lines, a, b, everyMs, 3_000);
      const [decodes, told] = [bench.decodeCount, bench.events.length];
      shake(bench, lines, a, b, everyMs, 6_000);
      expect(bench.decodeCount - decodes).toBeLessThanOrEqual(5 * 6 + 5);
      expect(bench.events.length - told).toBeLessThanOrEqual(1);
      expect(bench.unknownLines().sort()).toEqual([a, b].sort());
      expect([bench.last?.health[a], bench.last?.health[b]]).toEqual(["loose-contact", "loose-contact"]);
    },
  );

  it("does not hold up the sensing of another lead", () => {
    for (let seed = 0; seed < 12 * testDepth; seed += 1) {
      const { lines, pairs, free, bench } = wiredBench(seed);
      const [a, b] = pairs[0] as [LineIndex, LineIndex];
      shake(bench, lines, a, b, 90, 3_000);
      lines.join(free[0]!, free[1]!);
      shake(bench, lines, a, b, 90, 400);
      expect([seed, bench.joins(free[0]!, free[1]!)]).toEqual([seed, true]);
    }
  });

  it("that flickers faster than a decode is unknown and leaves the rest known", () => {
    const { lines, pairs, bench } = wiredBench(7);
    const [a, b] = pairs[0] as [LineIndex, LineIndex];
    lines.setFault(a, "loose-contact");
    bench.run(5_000);
    expect(bench.unknownLines()).toEqual(expect.arrayContaining([a, b]));
    expect(bench.unknownLines().length).toBeLessThanOrEqual(4);
    expect(bench.last?.health[a]).toBe("loose-contact");
  });

  it("is trusted again two seconds after it holds", () => {
    const { lines, pairs, bench } = wiredBench(8);
    const [a, b] = pairs[0] as [LineIndex, LineIndex];
    shake(bench, lines, a, b, 90, 3_000);
    lines.join(a, b);
    bench.run(4_000);
    expect(bench.unknownLines()).toEqual([]);
    expect(bench.joins(a, b)).toBe(true);
    lines.setFault(a, "loose-contact");
    bench.run(4_000);
    lines.setFault(a, null);
    bench.run(4_000);
    expect(bench.unknownLines()).toEqual([]);
    expect(bench.joins(a, b)).toBe(true);
    expect(new Set(bench.last?.health)).toEqual(new Set(["healthy"]));
  });
});

describe("a line that goes bad or well while it is wired", () => {
  it("is noticed when its output dies, whichever end of the lead it is", () => {
    for (const end of [0, 1]) {
      const { lines, pairs, bench } = wiredBench(11);
      lines.setFault(pairs[0]![end]!, "dead-output");
      bench.run(1_000);
      expect([end, bench.last?.health[pairs[0]![end]!]]).toEqual([end, "dead-output"]);
      expect(bench.joins(...pairs[0]!)).toBe(true);
    }
  });

  it("is noticed when lines that were stuck low come free, though most of the board was stuck", () => {
    const lines = new SimulatedLines(10);
    const chain = [4, 0, 1, 2, 3, 5, 6, 7, 8].map(line);
    chain.slice(1).forEach((each, index) => lines.join(chain[index]!, each));
    lines.setFault(line(4), "stuck-low");
    const bench = new ScannerBench(lines).run(1_000);
    expect(bench.unknownLines()).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    lines.part(line(4), line(0));
    bench.run(1_000);
    expect(bench.unknownLines()).toEqual([4]);
    expect(bench.last?.groups).toEqual([[0, 1, 2, 3, 5, 6, 7, 8]]);
  });
});

describe("codes", () => {
  it("are sensed within two rounds of the watch though no line changes", () => {
    const lines = new SimulatedLines(206, 100);
    const bench = new ScannerBench(lines).run(500);
    lines.setCode(42, true);
    expect(bench.stepsUntil(() => bench.last?.codes[42] === 1)).toBeLessThanOrEqual(18);
    lines.setCode(42, false);
    expect(bench.stepsUntil(() => bench.last?.codes[42] === 0)).toBeLessThanOrEqual(18);
  });
});

describe("a line held high", () => {
  it("is told from one that just does not answer when a lead joins a good line to it", () => {
    const { lines, free, bench } = wiredBench(9);
    lines.setFault(free[0]!, "stuck-high");
    bench.run(1_000);
    expect(bench.last?.health[free[0]!]).toBe("no-answer");
    lines.join(free[0]!, free[1]!);
    bench.run(1_000);
    expect([bench.last?.health[free[0]!], bench.last?.health[free[1]!]]).toEqual([
      "stuck-high",
      "stuck-high",
    ]);
    lines.part(free[0]!, free[1]!);
    bench.run(1_000);
    expect([bench.last?.health[free[0]!], bench.last?.health[free[1]!]]).toEqual(["stuck-high", "healthy"]);
    lines.setFault(free[0]!, null);
    bench.run(1_000);
    expect(bench.last?.health[free[0]!]).toBe("healthy");
  });

  it("is named with its whole group when it falls silent while wired", () => {
    const { lines, pairs, bench } = wiredBench(10);
    const [a, b] = pairs[0] as [LineIndex, LineIndex];
    lines.setFault(a, "stuck-high");
    bench.run(1_000);
    expect([bench.last?.health[a], bench.last?.health[b]]).toEqual(["stuck-high", "stuck-high"]);
  });
});

describe("the self-check of an empty board", () => {
  const check = (lines: SimulatedLines): ScannerBench => {
    const bench = new ScannerBench(lines).run(500);
    bench.scanner.startSelfCheck();
    bench.stepsUntil(() => bench.events.some(({ event }) => event.type === "self-check-result"));
    return bench;
  };
  const resultOf = (bench: ScannerBench): { health: Record<number, string>; tied: number[][] } => {
    const event = bench.events.map((each) => each.event).find(({ type }) => type === "self-check-result");
    if (event?.type !== "self-check-result") throw new Error("no result");
    const health = Object.fromEntries([...event.health.entries()].filter(([, each]) => each !== "healthy"));
    return { health, tied: event.tied };
  };

  it("finds nothing on a good board and tells how far it is", () => {
    const bench = check(new SimulatedLines(206));
    expect(resultOf(bench)).toEqual({ health: {}, tied: [] });
    const progress = bench.events.flatMap(({ event }) =>
      event.type === "self-check-progress" ? [event.doneCount] : [],
    );
    expect(progress).toEqual(Array.from({ length: 206 }, (_, index) => index + 1));
  });

  it("finds two outputs that are tied, and from then on senses leads on them rightly", () => {
    const lines = new SimulatedLines(206);
    lines.tieOutputs(line(12), line(13));
    const bench = check(lines);
    expect(resultOf(bench)).toEqual({ health: { 12: "outputs-tied", 13: "outputs-tied" }, tied: [[12, 13]] });
    bench.run(1_000);
    expect(bench.last?.groups).toEqual([]);
    expect(bench.unknownLines()).toEqual([12, 13]);
    const fullDecodeCount = bench.scanner.fullDecodeCount;
    lines.join(line(12), line(100));
    lines.join(line(13), line(150));
    bench.run(1_000);
    expect(bench.last?.groups).toEqual([[12, 100], [13, 150]]); // prettier-ignore
    expect(bench.unknownLines()).toEqual([]);
    lines.part(line(12), line(100));
    bench.run(1_000);
    expect(bench.last?.groups).toEqual([[13, 150]]);
    expect(bench.unknownLines()).toEqual([12]);
    expect(bench.scanner.fullDecodeCount).toBe(fullDecodeCount);
  });

  it("names no contact for a reading that came once, and says where a board is noisy", () => {
    const random = seeded(11);
    const oneNoisy = new SimulatedLines(206);
    const disturbed = new DisturbedLines(oneNoisy, random, () => 0);
    const bench = new ScannerBench(disturbed).run(500);
    disturbed.disturbance = { kind: "noise", share: 0.05, line: line(77) };
    bench.scanner.startSelfCheck();
    bench.stepsUntil(() => bench.events.some(({ event }) => event.type === "self-check-result"));
    const result = bench.events.map(({ event }) => event).find(({ type }) => type === "self-check-result");
    expect(result).toMatchObject({ tied: [] });
    expect(result?.type === "self-check-result" && result.noisy).toContain(77);
    expect(resultOf(bench).health).toEqual({});
  });

  it.each([1, 2, 3, 4, 5, 6])("blames nobody for one bit in 20,000 read wrong: seed %d", (seed) => {
    const lines = new SimulatedLines(206);
    lines.setNoise(1 / 20_000, seeded(seed));
    const { health, tied } = resultOf(check(lines));
    expect({ health, tied }).toEqual({ health: {}, tied: [] });
  });

  it("finds every bad line", () => {
    const lines = new SimulatedLines(64);
    lines.setFault(line(3), "stuck-low");
    lines.setFault(line(9), "stuck-high");
    lines.setFault(line(20), "dead-output");
    lines.setFault(line(63), "dead-input");
    expect(resultOf(check(lines)).health).toEqual({
      3: "stuck-low",
      9: "no-answer",
      20: "no-answer",
      63: "no-answer",
    });
  });
});
