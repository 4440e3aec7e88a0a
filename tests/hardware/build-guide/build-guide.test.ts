import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { namedLines } from "../../../hardware/build-guide/board-wiring.ts";
import { calculations, isKept } from "../../../hardware/build-guide/calculations.ts";
import { inputChip, outputChip } from "../../../hardware/build-guide/chip-pins.ts";
import { drawGuide } from "../../../hardware/build-guide/draw.ts";
import { headerPinOfBcm, supplyPins } from "../../../hardware/build-guide/header-pins.ts";
import { strapsOf } from "../../../hardware/build-guide/label-sheets.ts";
import { partsList } from "../../../hardware/build-guide/parts-list.ts";
import { pinTable } from "../../../hardware/build-guide/pin-table.ts";
import { powerBudget } from "../../../hardware/build-guide/power-budget.ts";
import { settleTimeUs } from "../../../hardware/lines/settle-time.ts";
import { boardSchema } from "../../../shared/board/board.schema.ts";

const face = { x: 0, y: 0, width: 0.1, height: 0.1 };
const entry = (letter: string, line: number, codeContacts?: number[]) => ({
  letter,
  side: "feed",
  lines: { L: line, N: line + 1, E: line + 2 },
  ...(codeContacts === undefined ? {} : { codeContacts }),
});

/** 17 lines, two of them probes and three a front; 6 code contacts. */
const chain = boardSchema.parse({
  version: 1,
  id: "tried",
  name: "Tried board",
  wiring: {
    kind: "chain",
    pins: { shiftClock: 11, dataOut: 10, latch: 8, load: 25, dataIn: 9, outputEnable: 24, codeIn: 23 },
    lineCount: 17,
    codeCount: 6,
  },
  codes: [
    { code: 1, csaMm2: 1.5, cores: ["brown", "blue", "earth"] },
    { code: 5, csaMm2: 2.5, cores: ["brown", "blue", "earth"] },
  ],
  stations: [
    {
      id: "way-1",
      kind: "way",
      label: "1",
      face,
      entries: [entry("a", 0, [0, 1, 2]), entry("b", 3, [3, 4, 5])],
    },
    {
      id: "socket-1",
      kind: "socket-outlet",
      label: "<1> & 2",
      face,
      entries: [entry("a", 6), entry("b", 9)],
      front: { L: 12, N: 13, E: 14 },
    },
  ],
  probes: { red: 15, black: 16 },
});

const direct = boardSchema.parse({
  version: 1,
  id: "bare",
  name: "Bare board",
  wiring: { kind: "direct", pins: [17, 4, 27, 22, 5, 6] },
  stations: [
    { id: "way-1", kind: "way", label: "1", face, entries: [entry("a", 0)] },
    { id: "socket-1", kind: "socket-outlet", label: "1", face, entries: [entry("a", 3)] },
  ],
});

const quantityOf = (board: typeof chain, what: RegExp, where: RegExp): number | undefined =>
  partsList(board).find((part) => what.test(part.what) && where.test(part.where))?.quantity;
const pageOf = (board: typeof chain, path: string): string =>
  drawGuide(board).find((page) => page.path === path)?.content ?? "";

describe("the 40-pin header", () => {
  it("has every BCM number from 0 to 27 once, and no supply pin among them", () => {
    const places = Object.values(headerPinOfBcm);
    expect(Object.keys(headerPinOfBcm).map(Number)).toEqual([...Array(28).keys()]);
    // 28 pins, two of 5 V (2 and 4), two of 3.3 V and eight of 0 V make the 40.
    const all = [...places, 2, 4, ...supplyPins.volts33, ...supplyPins.zeroVolts];
    expect([...all].sort((a, b) => a - b)).toEqual([...Array(40).keys()].map((index) => index + 1));
  });
});

describe("the chips' packages", () => {
  it.each([
    [
      outputChip.name,
      [
        ...outputChip.outputPins,
        outputChip.serialIn,
        outputChip.serialOut,
        outputChip.shiftClock,
        outputChip.latch,
        outputChip.outputEnable,
        outputChip.clear,
        outputChip.supply,
        outputChip.zeroVolts,
      ],
    ],
    // Pin 7, the inverted serial output, is left open.
    [
      inputChip.name,
      [
        ...inputChip.inputPins,
        inputChip.serialIn,
        inputChip.serialOut,
        inputChip.shiftClock,
        inputChip.clockInhibit,
        inputChip.load,
        inputChip.supply,
        inputChip.zeroVolts,
        7,
      ],
    ],
  ])("%s uses each of 16 pins once", (_, pins) => {
    expect([...pins].sort((a, b) => a - b)).toEqual([...Array(16).keys()].map((index) => index + 1));
  });
});

describe("the parts list of a chain board of 17 lines and 6 code contacts", () => {
  it.each([
    { what: /74HC595/, where: /outputs/, quantity: 3 },
    { what: /74HC165/, where: /inputs/, quantity: 3 },
    { what: /74HC165/, where: /code/, quantity: 1 },
    { what: /100 nF/, where: /each chip/, quantity: 8 },
    { what: /Schottky/, where: /output/, quantity: 17 },
    { what: /10 kΩ/, where: /pull-up of each line/, quantity: 17 },
    { what: /10 kΩ/, where: /pull-up of each code/, quantity: 6 },
    { what: /330 Ω/, where: /to its contact/, quantity: 17 },
    { what: /330 Ω/, where: /GPIO/, quantity: 7 },
    { what: /10 kΩ/, where: /at rest/, quantity: 4 },
    // Of 1.5 mm² eight leads, of 2.5 mm² ten, three cores each.
    { what: /free connector of 7 poles/, where: /18 cable leads/, quantity: 36 },
    { what: /flexible wire/, where: /cores of the leads/, quantity: 54 },
    { what: /no 4 mm test lead fits/, where: /front/, quantity: 3 },
    { what: /47 µF/, where: /ribbon/, quantity: 2 },
    { what: /68 Ω/, where: /driver of each clock run/, quantity: 3 },
    { what: /IC socket/, where: /every chip/, quantity: 8 },
    { what: /0.5 A self-resetting fuse/, where: /3.3 V feed/, quantity: 1 },
    { what: /probe tip/, where: /probes/, quantity: 2 },
  ])("has $quantity of $what for $where", ({ what, where, quantity }) => {
    expect(quantityOf(chain, what, where)).toBe(quantity);
  });

  it("has no chip and no diode for a direct board, and two resistors and a pull-up a line", () => {
    expect(partsList(direct).filter(({ what }) => /74|Schottky/.test(what))).toEqual([]);
    expect(quantityOf(direct, /10 kΩ/, /pull-up/)).toBe(6);
    expect(quantityOf(direct, /330 Ω/, /contact/)).toBe(6);
    expect(quantityOf(direct, /330 Ω/, /GPIO/)).toBe(6);
    expect(quantityOf(direct, /probes?/, /probes/)).toBeUndefined();
  });
});

describe("the power budget", () => {
  // By hand: 0.33 mA a pulled line or strapped code; 8 chips of 0.08 mA.
  it("of 17 lines and 6 codes is 8.2 mA at the most", () => {
    expect(powerBudget(chain).worstMilliamp).toBeCloseTo(23 * 0.33 + 8 * 0.08, 6);
    expect(powerBudget(chain).worstMilliwatt).toBeCloseTo(3.3 * (23 * 0.33 + 8 * 0.08), 6);
  });

  // By hand: (3.3 - 0.45) V / 10 kΩ = 0.285 mA; 0.094 V a line over 330 Ω; 0.45 + 5 x 0.094 = 0.92 V, six would be 1.01 V.
  it("promises a low for groups of five behind diodes of 0.35 V and 330 Ω, where 0.99 V is low", () => {
    expect(powerBudget(chain).lineMilliamp).toBeCloseTo(0.285, 6);
    expect(powerBudget(chain).largestPromisedGroup).toBe(5);
  });

  // By hand: 0.32 mA over 660 Ω is 0.211 V a line; 0.1 + 3 x 0.211 = 0.73 V, four would be 0.94 V.
  it("promises a low for groups of three on bare pins, where 0.8 V is low", () => {
    expect(powerBudget(direct).largestPromisedGroup).toBe(3);
  });

  // By hand: 0.606 mA over 330 Ω is 0.2 V a line; 0.45 + 2 x 0.2 = 0.85 V, three would be 1.05 V.
  it("promises a low for groups of two only where the description has pull-ups of 4.7 kΩ", () => {
    const wiring = { ...chain.wiring, electrics: { pullUpOhm: 4_700, capacitancePf: 1_000 } };
    expect(powerBudget({ ...chain, wiring }).largestPromisedGroup).toBe(2);
    expect(quantityOf({ ...chain, wiring }, /4.7 kΩ/, /pull-up of each line/)).toBe(17);
  });

  it("lets no short draw more than an output or a pin may carry", () => {
    for (const board of [chain, direct]) expect(powerBudget(board).shortMilliamp).toBeLessThan(16);
  });
});

describe("the drawings of a board", () => {
  it("show every pin with its place on the header", () => {
    expect(pinTable(chain).map(({ bcm, headerPin, signal }) => [bcm, headerPin, signal])).toEqual([
      [23, 16, "codeIn"],
      [24, 18, "outputEnable"],
      [10, 19, "dataOut"],
      [9, 21, "dataIn"],
      [25, 22, "load"],
      [11, 23, "shiftClock"],
      [8, 24, "latch"],
    ]);
    for (const { bcm, headerPin, signal } of pinTable(chain))
      expect(pageOf(chain, "schematic.svg")).toContain(`pin ${headerPin}  BCM ${bcm}  ${signal}<`);
  });

  it("show every chip once, and each line of a direct board at its pin", () => {
    const drawn = pageOf(chain, "schematic.svg");
    for (const name of ["74HC595 no. 0", "74HC595 no. 2", "74HC165 no. 2", "74HC165 code no. 0"])
      expect(drawn.split(`>${name}<`)).toHaveLength(2);
    expect(drawn).not.toContain("no. 3<");
    expect(pageOf(direct, "schematic.svg")).toContain(">line 0: Way 1 a L<");
    expect(pageOf(direct, "schematic.svg")).toContain(`pin ${headerPinOfBcm[17]}  BCM 17<`);
  });

  it("show on the layout each pin of both chips, and every small board once", () => {
    const drawn = pageOf(chain, "layout.svg");
    // Of 2 chips with 16 pins: each number stands twice, above or below its pin.
    for (let pin = 1; pin <= 16; pin += 1)
      expect(drawn.split(`font-size="1.8" text-anchor="middle">${pin}<`)).toHaveLength(3);
    for (const name of ["board 0", "board 2", "codes 0"]) expect(drawn.split(`>${name}<`)).toHaveLength(2);
    expect(drawn).not.toMatch(/>(board 3|codes 1)</);
    expect(drawn).not.toContain(">?<");
    expect(pageOf(direct, "layout.svg")).toBe("");
  });

  it("show the fuse, the capacitors, and the resistor that holds each output of the Pi at rest", () => {
    const drawn = pageOf(chain, "schematic.svg");
    for (const words of ["fuse 0.5 A", "47 µF at the ribbon", "100 nF, pin 16 to pin 8, each chip"])
      expect(drawn.split(`>${words}<`)).toHaveLength(2);
    expect(drawn.split(">10 kΩ to 0 V<")).toHaveLength(3);
    expect(drawn.split(">10 kΩ to 3.3 V<")).toHaveLength(3);
    expect(drawn.split(">68 Ω<")).toHaveLength(4);
  });

  it("keep a label's own signs out of the drawing's language", () => {
    expect(pageOf(chain, "station-labels-1.svg")).toContain("Socket outlet &lt;1&gt; &amp; 2");
  });

  it("list every line with its chip's pins, and the spare ones as spare", () => {
    const list = pageOf(chain, "wiring-list.md");
    // Line 9 is bit 1 of chip 1: QB is pin 1 of a 595, B is pin 12 of a 165.
    expect(list).toContain("| 9 | Socket outlet <1> & 2 b L | 1 | QB (pin 1) | B (pin 12) |");
    expect(list).toContain("| 16 | probe black | 2 | QA (pin 15) | A (pin 11) |");
    expect(list).toContain("| 5 | Way 1 b code 4 | 0 | F (pin 4) |");
    expect(namedLines(chain)).toHaveLength(17);
  });

  it("put the same label on both ends of a lead, folded", () => {
    const labels = pageOf(chain, "lead-labels-1.svg");
    expect(labels.split(">2.5 mm² no. 2<")).toHaveLength(5);
    expect(labels).toContain("code 5: 1 strap, 2 open, 4 strap");
  });

  it("say what each code straps, the least significant contact first", () => {
    expect(strapsOf(3, 3)).toBe("1 strap, 2 strap, 4 open");
    expect(strapsOf(4, 3)).toBe("1 open, 2 open, 4 strap");
  });

  it("warn of a line on a pin that the Pi itself pulls up, and of no other", () => {
    // By hand: 3.3 V over 1.8 kΩ and four times 330 Ω leaves 1.4 V where 0.8 V is low.
    const wiring = { kind: "direct" as const, pins: [17, 4, 3, 22, 5, 6] };
    expect(pageOf({ ...direct, wiring }, "parts-and-pins.md")).toMatch(
      /> Caution: the Pi has 1\.8 kΩ pull-ups on BCM 3\./,
    );
    expect(pageOf(direct, "parts-and-pins.md")).not.toContain("pull-ups on BCM");
    expect(pageOf(chain, "parts-and-pins.md")).not.toContain("pull-ups on BCM");
  });

  it("carry the caution on the pages that are built from", () => {
    for (const board of [chain, direct]) {
      expect(pageOf(board, "parts-and-pins.md")).toContain("extra-low voltage only");
      expect(pageOf(board, "schematic.svg")).toContain("Never joined to the mains");
    }
  });
});

describe("the committed pages of the build guide", () => {
  const hardware = join(import.meta.dirname, "../../../hardware");
  const boards = readdirSync(join(hardware, "boards"))
    .filter((name) => name.endsWith(".json"))
    .map((name) => boardSchema.parse(JSON.parse(readFileSync(join(hardware, "boards", name), "utf8"))));

  it("are there for the boards that ship", () => {
    expect(boards.map(({ id }) => id)).toEqual(expect.arrayContaining(["workshop", "small"]));
  });

  it.each(boards)("are what the script draws for $id today; `build-guide` draws them afresh", (board) => {
    const folder = join(hardware, "build-guide", board.id);
    const drawn = drawGuide(board);
    expect(readdirSync(folder).sort()).toEqual(drawn.map(({ path }) => path).sort());
    for (const { path, content } of drawn)
      expect([path, readFileSync(join(folder, path), "utf8")]).toEqual([path, content]);
  });
});

describe("what is calculated for a board", () => {
  // 0.35 V + 0.1 V + 2 x 0.285 mA x 330 ohm, by hand.
  it("is the level of a pulled lead at the far input", () => {
    const [level] = calculations(chain);
    expect(level).toMatchObject({ unit: "V", limit: { bound: "at most", value: 0.99 } });
    expect(level?.value).toBeCloseTo(0.638, 3);
  });

  // 10 kOhm x 1 nF x ln(1 / 0.3) = 12.04 us, by hand; the wait has a quarter more.
  it("is the time in which a released line surely reads high, and the bench waits for longer", () => {
    const rise = calculations(chain).find(({ what }) => what.startsWith("a released line on a long lead"));
    expect(rise?.value).toBeCloseTo(12.04, 2);
    expect(rise?.limit.value).toBeCloseTo(15.05, 2);
    const slow = { ...chain.wiring, electrics: { pullUpOhm: 22_000, capacitancePf: 2_000 } };
    expect(settleTimeUs(slow)).toBeCloseTo(66.2, 1);
  });

  it("keeps every limit on all shipped boards, and shows which one a value breaks", () => {
    for (const name of readdirSync("hardware/boards").filter((file) => file.endsWith(".json"))) {
      const board = boardSchema.parse(JSON.parse(readFileSync(join("hardware/boards", name), "utf8")));
      expect(calculations(board).filter((each) => !isKept(each))).toEqual([]);
      expect(pageOf(board, "calculations.md")).not.toContain("BROKEN");
    }
    const limit = { bound: "at least", value: 2, source: "" } as const;
    expect(isKept({ what: "", how: "", value: 1.9, unit: "V", limit })).toBe(false);
  });
});

describe("the front panel", () => {
  it("has a hole for every contact and front at its true size, and none outside the panel", () => {
    for (const board of [chain, direct]) {
      const drawn = pageOf(board, "panel.svg");
      const holes = [...drawn.matchAll(/<circle class="rim [a-z]+" cx="([\d.]+)" cy="([\d.]+)"/g)];
      const probes = board.probes === undefined ? 0 : 2;
      expect(holes).toHaveLength(namedLines(board).length - probes);
      const [, width, height] = /width="(\d+)mm" height="(\d+)mm"/.exec(drawn) ?? [];
      for (const [, x, y] of holes) {
        expect(Number(x)).toBeLessThan(Number(width));
        expect(Number(y)).toBeLessThan(Number(height));
      }
    }
  });
});
