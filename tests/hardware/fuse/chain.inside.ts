import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type ChainLines, type ChainPins, openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { linesContract } from "../lines/lines-contract.ts";
import * as emulated from "./emulated-gpio.ts";

const { control, freshKernel, freshWorkshop, putChain, report, workshop, workshopPins } = emulated;

const hands = {
  join: emulated.join,
  part: emulated.part,
  pulledLines: () => report().pulled,
};

// Fewer lines than the workshop board has, for time; all of that board's lines are proved by its decodes.
linesContract("a chain board of 62 lines with codes", async () => {
  freshKernel();
  putChain({ outputChipCount: 8, inputChipCount: 8, codeChipCount: 4, pins: workshopPins });
  return {
    lines: await openChainLines({ pins: workshopPins, lineCount: 62, codeCount: 30 }),
    ...hands,
    setCode: (index, isStrapped) => control(`code ${index} ${isStrapped ? 1 : 0}`),
  };
});

linesContract("a chain board of 24 lines without output enable", async () => {
  freshKernel();
  const { outputEnable: _, codeIn: __, ...pins } = workshopPins;
  putChain({ outputChipCount: 3, inputChipCount: 3, pins });
  return { lines: await openChainLines({ pins, lineCount: 24, codeCount: 0 }), ...hands };
});

linesContract("a chain board with more code contacts than lines", async () => {
  freshKernel();
  putChain({ outputChipCount: 2, inputChipCount: 2, codeChipCount: 5, pins: workshopPins });
  return {
    lines: await openChainLines({ pins: workshopPins, lineCount: 13, codeCount: 37 }),
    ...hands,
    setCode: (index, isStrapped) => control(`code ${index} ${isStrapped ? 1 : 0}`),
  };
});

describe("a chain board", () => {
  let lines: ChainLines | undefined;
  const open = async (): Promise<ChainLines> => (lines = await openChainLines(workshop));
  beforeEach(freshWorkshop);
  afterEach(() => {
    lines?.close();
    lines = undefined;
  });

  it("starts without pulling one line for one moment, whatever stands in its latches at power-up", async () => {
    await open();
    expect(report().pullEvents).toBe(0);
    expect(report().pins[24]).toMatchObject({ isOut: true, level: 0 });
  });

  it("is let go when it closes: no line pulled, output enable high again, no pin kept", async () => {
    const opened = await open();
    opened.exchange(new Uint8Array(206).fill(1));
    expect(report().pulled).toHaveLength(206);
    opened.close();
    expect(report().pulled).toEqual([]);
    expect(Object.values(report().pins).filter(({ isExported }) => isExported)).toEqual([]);
  });

  it("never pulls the spare outputs of its last chip", async () => {
    const opened = await open();
    opened.exchange(new Uint8Array(206).fill(1));
    expect(Math.max(...report().pulled)).toBe(205);
  });

  // 206 reads, 208 clocks of two writes, two writes each for load and latch.
  it("costs 626 GPIO calls for a pattern like the last, and opens no file", async () => {
    const opened = await open();
    opened.exchange(new Uint8Array(206));
    const pulled = new Uint8Array(206).fill(1, 0, 1);
    opened.exchange(pulled);
    control("clear-counts");
    opened.exchange(pulled);
    const { reads, writes, opens, directionWrites, pins } = report();
    expect(pins[9]?.reads).toBe(206);
    expect(reads).toBe(206);
    // Line 0 leaves last: the data pin falls once for it and, at the start, rises once after the last pattern's.
    expect(pins[10]?.writes).toBe(2);
    expect(writes).toBe(2 * 208 + 4 + 2);
    expect(directionWrites).toBe(0);
    // The one is the look at the counts.
    expect(opens).toBe(1);
  });

  it("writes the data pin only when the bit changes", async () => {
    const opened = await open();
    opened.exchange(new Uint8Array(206));
    control("clear-counts");
    opened.exchange(new Uint8Array(206));
    expect(report().pins[10]?.writes).toBe(0);
    control("clear-counts");
    opened.exchange(Uint8Array.from({ length: 206 }, (_, line) => (line < 100 ? 1 : 0)));
    expect(report().pins[10]?.writes).toBe(1);
  });

  it("reads the code contacts only after a pattern that pulls nothing", async () => {
    const opened = await open();
    opened.exchange(new Uint8Array(206).fill(1));
    control("clear-counts");
    opened.exchange(new Uint8Array(206));
    expect(report().pins[23]?.reads).toBe(0);
    opened.exchange(new Uint8Array(206));
    expect(report().pins[23]?.reads).toBe(120);
  });
});

describe("the word shifted round the loop of a chain board", () => {
  const check = async (
    wired: ChainPins = workshopPins,
    chips: [number, number] = [26, 26],
    ...faults: string[]
  ) => {
    freshKernel();
    putChain({ outputChipCount: chips[0], inputChipCount: chips[1], codeChipCount: 15, pins: wired });
    if (faults.length > 0) control(...faults);
    // Opened as the description says, not as it is wired.
    const lines = await openChainLines(workshop);
    const before = report().pullEvents;
    const result = lines.chainCheck();
    const pullEvents = report().pullEvents - before;
    lines.close();
    return { result, pullEvents };
  };
  const swapped = (a: keyof ChainPins, b: keyof ChainPins): ChainPins => ({
    ...workshopPins,
    [a]: workshopPins[b],
    [b]: workshopPins[a],
  });

  it("comes back in time on a sound board, and no line moves", async () => {
    expect(await check()).toEqual({ result: { kind: "sound" }, pullEvents: 0 });
  });

  it("is not misled by leads, pulled groups or bad lines", async () => {
    const { result } = await check(
      workshopPins,
      [26, 26],
      "join 3 90",
      "join 90 91",
      "stuck-low 200",
      "stuck-low 0",
    );
    expect(result).toEqual({ kind: "sound" });
  });

  it.each([
    { outputChipCount: 25, inputChipCount: 26 },
    { outputChipCount: 26, inputChipCount: 25 },
    { outputChipCount: 27, inputChipCount: 26 },
    { outputChipCount: 28, inputChipCount: 30 },
  ])(
    "counts $outputChipCount output and $inputChipCount input chips where 26 are described",
    async (chips) => {
      const { result } = await check(workshopPins, [chips.outputChipCount, chips.inputChipCount]);
      expect(result).toEqual({ kind: "wrong-length", expectedChipCount: 26, ...chips });
    },
  );

  it.each([
    ["shiftClock", "dataOut"],
    ["shiftClock", "latch"],
    ["shiftClock", "load"],
    ["dataOut", "latch"],
    ["dataOut", "load"],
    ["latch", "load"],
    ["load", "outputEnable"],
    ["dataIn", "codeIn"],
  ] as const)("names %s and %s when they are swapped", async (a, b) => {
    const { result } = await check(swapped(a, b));
    expect(result.kind).toBe("swapped-pins");
    const swaps = result.kind === "swapped-pins" ? result.swaps : [];
    expect(swaps).toContainEqual({ signal: a, pin: b });
    expect(swaps).toContainEqual({ signal: b, pin: a });
    expect(swaps).toHaveLength(2);
  });

  it.each(
    [1, 13, 25].flatMap((chip) => [
      [chip, 0],
      [chip, 1],
    ]),
  )(
    "says how many chips answer when the inputs are cut before chip %i and read %i there",
    async (chip, level) => {
      const { result } = await check(workshopPins, [26, 26], `cut-input-chain ${chip} ${level}`);
      expect(result).toEqual({ kind: "open-chain", inputChipCount: 26 - chip });
    },
  );

  it("says that it does not come back, and no more, when the outputs are cut or the tie is not there", async () => {
    expect((await check(workshopPins, [26, 26], "cut-output-chain 9")).result).toEqual({ kind: "no-loop" });
    expect((await check(workshopPins, [26, 26], "cut-tie")).result).toEqual({ kind: "no-loop" });
  });

  it("leaves a board without the tie working", async () => {
    freshWorkshop();
    control("cut-tie", "join 4 180");
    const lines = await openChainLines(workshop);
    lines.chainCheck();
    lines.exchange(Uint8Array.from({ length: 206 }, (_, line) => (line === 4 ? 1 : 0)));
    const { lines: read } = lines.exchange(new Uint8Array(206));
    lines.close();
    expect([...read.keys()].filter((line) => read[line] === 1)).toEqual([4, 180]);
  });
});
