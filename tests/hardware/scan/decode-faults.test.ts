import { describe, expect, it, vi } from "vitest";
import { decodeLines } from "../../../hardware/scan/decode.ts";
import { type LineIndex, lineIndex } from "../../../hardware/lines/line-index.ts";
import { joinedGroups, type LineHealth } from "../../../hardware/lines/line-model.ts";
import type { LineReading, Lines } from "../../../hardware/lines/lines.ts";
import type { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { type LineFault } from "../../../hardware/lines/simulated-lines.ts";
import { byLeast, randomGroups, shuffled, wiredBoard } from "./random-copper.ts";
import { randomShare } from "../../breadth.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";

vi.setConfig({ testTimeout: 60_000 * testDepth });

const hardFaults: LineFault[] = ["stuck-low", "stuck-high", "dead-output", "dead-input"];

function randomBoard(seed: number): { lines: SimulatedLines; groups: LineIndex[][]; random: () => number } {
  const random = seeded(seed);
  const lineCount = 4 + Math.floor(random() * 100);
  const sizes = Array.from({ length: lineCount }, () => (random() < 0.8 ? 2 : 1 + Math.floor(random() * 8)));
  const groups = randomGroups(lineCount, sizes, random).filter(() => random() < 0.8);
  return { lines: wiredBoard(lineCount, groups, random), groups: byLeast(groups), random };
}

/** Every line's true group in copper, free lines included. */
function copperOf(lineCount: number, groups: readonly LineIndex[][]): Map<LineIndex, readonly LineIndex[]> {
  const copper = new Map<LineIndex, readonly LineIndex[]>();
  for (let line = 0; line < lineCount; line += 1) copper.set(lineIndex(line), [lineIndex(line)]);
  for (const group of groups) for (const line of group) copper.set(line, group);
  return copper;
}

/** The lines whose sensed group is neither their copper nor unknown. */
function wronglySensed(lines: Lines, groups: readonly LineIndex[][]): LineIndex[] {
  const { model, isAccepted } = decodeLines(lines);
  expect(isAccepted).toBe(true);
  const sensed = copperOf(lines.lineCount, joinedGroups(model));
  return [...copperOf(lines.lineCount, groups)]
    .filter(([line, group]) => model.unknown[line] !== 1 && sensed.get(line)!.join() !== group.join())
    .map(([line]) => line);
}

describe("a decode of a board with one bad line", () => {
  it.each(hardFaults)(
    "gives every line its true group or calls it unknown, with a line that is %s",
    (fault) => {
      for (let seed = 0; seed < 500 * randomShare; seed += 1) {
        const { lines, groups, random } = randomBoard(seed);
        lines.setFault(lineIndex(Math.floor(random() * lines.lineCount)), fault);
        expect([seed, wronglySensed(lines, groups)]).toEqual([seed, []]);
      }
    },
  );

  it("leaves all lines known that are not joined to the bad one", () => {
    for (let seed = 0; seed < 500 * randomShare; seed += 1) {
      const { lines, groups, random } = randomBoard(seed);
      const bad = lineIndex(Math.floor(random() * lines.lineCount));
      lines.setFault(bad, hardFaults[seed % hardFaults.length]!);
      const { model } = decodeLines(lines);
      const mayBeUnknown = copperOf(lines.lineCount, groups).get(bad)!;
      const unknown = [...model.unknown.keys()].filter((line) => model.unknown[line] === 1).map(lineIndex);
      expect(unknown.filter((line) => !mayBeUnknown.includes(line))).toEqual([]);
    }
  });

  const board = (...groups: number[][]): SimulatedLines =>
    wiredBoard(
      24,
      groups.map((group) => group.map(lineIndex)),
      () => 0,
    );
  const verdict = (lines: SimulatedLines): { health: Record<number, LineHealth>; groups: LineIndex[][] } => {
    const { model } = decodeLines(lines);
    const health = Object.fromEntries([...model.health.entries()].filter(([, each]) => each !== "healthy"));
    return { health, groups: joinedGroups(model) };
  };

  it("names every line of a group that is stuck low", () => {
    const lines = board([3, 17], [4, 9]);
    lines.setFault(lineIndex(17), "stuck-low");
    expect(verdict(lines)).toEqual({ health: { 3: "stuck-low", 17: "stuck-low" }, groups: [[4, 9]] });
  });

  it("believes the join of a line whose output is dead, and names the output", () => {
    const lines = board([3, 17], [4, 9]);
    lines.setFault(lineIndex(3), "dead-output");
    expect(verdict(lines)).toEqual({ health: { 3: "dead-output" }, groups: [[3, 17], [4, 9]] }); // prettier-ignore
  });

  it("believes the join of a line that another line points to, and names its input", () => {
    const lines = board([3, 17], [4, 9]);
    lines.setFault(lineIndex(17), "dead-input");
    expect(verdict(lines)).toEqual({ health: { 17: "dead-input" }, groups: [[3, 17], [4, 9]] }); // prettier-ignore
  });

  it("says of a free line that neither hears nor is heard that it does not answer", () => {
    for (const fault of ["stuck-high", "dead-output", "dead-input"] as const) {
      const lines = board([3, 17]);
      lines.setFault(lineIndex(5), fault);
      expect(verdict(lines)).toEqual({ health: { 5: "no-answer" }, groups: [[3, 17]] });
    }
  });

  it("calls both ends of a lead to a line that is stuck high unknown", () => {
    const lines = board([3, 17], [4, 9]);
    lines.setFault(lineIndex(3), "stuck-high");
    expect(verdict(lines)).toEqual({ health: { 3: "no-answer", 17: "no-answer" }, groups: [[4, 9]] });
  });

  it("still senses leads on two lines whose outputs are known to be tied", () => {
    const lines = board([3, 17], [4, 9]);
    lines.tieOutputs(lineIndex(3), lineIndex(4));
    const { model } = decodeLines(lines, { neverPull: new Set([lineIndex(3), lineIndex(4)]) });
    expect(joinedGroups(model)).toEqual([[3, 17], [4, 9]]); // prettier-ignore
    expect([model.health[3], model.health[4], model.health[5]]).toEqual([
      "outputs-tied",
      "outputs-tied",
      "healthy",
    ]);
    lines.part(lineIndex(3), lineIndex(17));
    const apart = decodeLines(lines, { neverPull: new Set([lineIndex(3), lineIndex(4)]) }).model;
    expect([apart.unknown[3], apart.unknown[4], apart.unknown[17]]).toEqual([1, 0, 0]);
  });

  it("calls every line unknown on a board that does not answer at all", () => {
    const lines = board([3, 17]);
    for (let line = 0; line < 24; line += 1) lines.setFault(lineIndex(line), "stuck-high");
    const { model, isAccepted } = decodeLines(lines);
    expect(isAccepted).toBe(true);
    expect([...model.unknown]).toEqual(new Array(24).fill(1));
    expect(lines.exchangeCount).toBeLessThan(24);
  });
});

describe("a decode of a board with several bad lines", () => {
  it("never joins lines that no lead joins", () => {
    for (let seed = 0; seed < 1_000 * randomShare; seed += 1) {
      const { lines, groups, random } = randomBoard(seed);
      const bad = shuffled(lines.lineCount, random).slice(0, 1 + Math.floor(random() * 5));
      for (const line of bad) lines.setFault(line, hardFaults[Math.floor(random() * hardFaults.length)]!);
      const copper = copperOf(lines.lineCount, groups);
      const { model } = decodeLines(lines);
      for (const group of joinedGroups(model))
        for (const line of group)
          expect([seed, copper.get(line)]).toEqual([seed, expect.arrayContaining([...group])]);
    }
  });
});

describe("a decode of a board with a loose contact", () => {
  it("gives the joins of other lines, or calls them unknown in one case of a hundred", () => {
    let otherCount = 0;
    let unknownCount = 0;
    for (let seed = 0; seed < 500 * randomShare; seed += 1) {
      const { lines, groups, random } = randomBoard(seed);
      const loose = lineIndex(Math.floor(random() * lines.lineCount));
      lines.setFault(loose, "loose-contact");
      const { model, isAccepted } = decodeLines(lines);
      if (!isAccepted) continue;
      const touched = copperOf(lines.lineCount, groups).get(loose)!;
      const sensed = joinedGroups(model).map(String);
      for (const group of groups.filter((each) => each !== touched)) {
        otherCount += 1;
        if (group.every((line) => model.unknown[line] === 1)) unknownCount += 1;
        else expect([seed, sensed]).toEqual([seed, expect.arrayContaining([String(group)])]);
      }
    }
    expect(otherCount).toBeGreaterThan(500 * randomShare);
    expect(unknownCount / otherCount).toBeLessThan(0.01);
  });
});

/** A board on which hands are at work: `work` is done just before the exchange of that number. */
class BusyLines implements Lines {
  readonly lineCount: number;
  readonly codeCount = 0;
  exchangeCount = 0;
  constructor(
    readonly board: SimulatedLines,
    readonly work: ReadonlyMap<number, () => void>,
  ) {
    this.lineCount = board.lineCount;
  }
  exchange(next: Uint8Array): LineReading {
    this.work.get(this.exchangeCount)?.();
    this.exchangeCount += 1;
    return this.board.exchange(next);
  }
  close(): void {
    this.board.close();
  }
}

describe("a decode while a lead is put in or taken out", () => {
  it("gives the joins as they were before or as they are after", () => {
    let seenAfter = 0;
    for (let seed = 0; seed < 2_000 * randomShare; seed += 1) {
      const { lines: board, groups, random } = randomBoard(seed);
      const before = naive(board);
      const [a, b] = shuffled(board.lineCount, random) as [LineIndex, LineIndex];
      const isPull = random() < 0.5 && groups.length > 0;
      const pulled = groups[Math.floor(random() * groups.length)];
      const change = (): void => {
        if (!isPull) board.join(a, b);
        else board.part(pulled![0]!, board.joinedTo(pulled![0]!)[0]!);
      };
      const busy = new BusyLines(board, new Map([[Math.floor(random() * 18), change]]));
      const { isAccepted, model } = decodeLines(busy);
      expect(isAccepted).toBe(true);
      const after = naive(board);
      const sensed = JSON.stringify(joinedGroups(model));
      expect([seed, [before, after]]).toEqual([seed, expect.arrayContaining([sensed])]);
      expect(new Set(model.health)).toEqual(new Set(["healthy"]));
      if (sensed === after && before !== after) seenAfter += 1;
    }
    expect(seenAfter).toBeGreaterThan(0);
  });

  it.each([
    {
      lineCount: 9,
      groups: [
        [0, 8],
        [1, 2, 3],
        [4, 7],
        [5, 6],
      ],
      lead: [1, 5],
      before: 8,
    },
    {
      lineCount: 13,
      groups: [
        [0, 2],
        [1, 3, 12],
        [4, 6, 8, 10],
        [7, 9],
      ],
      lead: [8, 11],
      before: 4,
    },
    {
      lineCount: 14,
      groups: [
        [0, 2, 7],
        [1, 12],
        [3, 5, 9],
        [4, 8, 13],
        [6, 10, 11],
      ],
      lead: [0, 4],
      before: 8,
    },
    {
      lineCount: 14,
      groups: [
        [0, 5, 8],
        [1, 7, 10, 11],
        [2, 3, 9],
        [12, 13],
      ],
      lead: [1, 12],
      before: 5,
    },
  ])("does not take lines of two crowds for one when lead $lead goes in before exchange $before", (board) => {
    const groups = board.groups.map((group) => group.map(lineIndex));
    const lines = wiredBoard(board.lineCount, groups, () => 0);
    const [a, b] = board.lead.map(lineIndex) as [LineIndex, LineIndex];
    const found = decodeLines(new BusyLines(lines, new Map([[board.before, () => lines.join(a, b)]])));
    const endsOf = (end: LineIndex): LineIndex[] => groups.find((group) => group.includes(end)) ?? [end];
    const untouched = groups.filter((group) => !group.includes(a) && !group.includes(b));
    const after = byLeast([...untouched, [...endsOf(a), ...endsOf(b)]]);
    expect([byLeast(groups), after].map(String)).toContain(String(joinedGroups(found.model)));
  });

  it("settles on what is there when the hands have stopped", () => {
    for (let seed = 0; seed < 300 * randomShare; seed += 1) {
      const { lines: board, random } = randomBoard(seed);
      const work = new Map<number, () => void>();
      for (let change = 0; change < 4; change += 1) {
        const [a, b] = shuffled(board.lineCount, random) as [LineIndex, LineIndex];
        work.set(Math.floor(random() * 30), () => board.join(a, b));
      }
      const busy = new BusyLines(board, work);
      decodeLines(busy);
      while (busy.exchangeCount < 30) decodeLines(busy);
      expect(JSON.stringify(joinedGroups(decodeLines(busy).model))).toEqual(naive(board));
    }
  });

  const naive = (board: SimulatedLines): string => {
    const groups = new Map<LineIndex, LineIndex[]>();
    for (let line = 0; line < board.lineCount; line += 1) {
      const reached = new Set([lineIndex(line)]);
      for (const each of reached) board.joinedTo(each).forEach((other) => reached.add(other));
      const group = [...reached].sort((x, y) => x - y);
      if (group.length > 1) groups.set(group[0]!, group);
    }
    return JSON.stringify(byLeast([...groups.values()]));
  };
});
