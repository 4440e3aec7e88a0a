import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import { LinesError } from "../../../hardware/lines/lines.ts";
import { openPins } from "../../../hardware/lines/open-pins.ts";
import { BareBehindPins, type BoardBehindPins, ChainBehindPins } from "./board-behind-pins.ts";
import { CharacterDouble } from "./character-double.ts";
import { linesContract } from "./lines-contract.ts";

const pins = { shiftClock: 17, dataOut: 27, latch: 22, load: 23, dataIn: 24, outputEnable: 25, codeIn: 5 };
const smallPins = Array.from({ length: 24 }, (_, line) => line + 4);
const chips = {
  gpiochip0: { label: "brcmvirt-gpio", pinCount: 2 },
  gpiochip4: { label: "pinctrl-rp1", pinCount: 54 },
  gpiochip11: { label: "pinctrl-rp1", pinCount: 4 },
};

const hands = ({ copper }: BoardBehindPins) => ({
  join: (a: number, b: number) => copper.join(lineIndex(a), lineIndex(b)),
  part: (a: number, b: number) => copper.part(lineIndex(a), lineIndex(b)),
  setCode: (index: number, isStrapped: boolean) => copper.setCode(index, isStrapped),
  pulledLines: () => copper.pulledLines(),
});

linesContract("a chain board through the character device", async () => {
  const board = new ChainBehindPins(pins, 22, 11);
  const device = new CharacterDouble(board, chips);
  const lines = await openChainLines({ pins, lineCount: 22, codeCount: 11, ...device.access });
  return { lines, ...hands(board), tearDown: () => device.remove() };
});

linesContract("a direct board through the character device", async () => {
  const board = new BareBehindPins(smallPins);
  const device = new CharacterDouble(board, chips);
  const { setCode: _, ...theirs } = hands(board);
  const lines = await openDirectLines({ pins: smallPins, ...device.access });
  return { lines, ...theirs, tearDown: () => device.remove() };
});

describe("pins of the character device", () => {
  const board = new ChainBehindPins(pins, 22, 11);
  const device = new CharacterDouble(board, chips);
  const chain = { pins, lineCount: 22, codeCount: 11, ...device.access };
  const refusal = (opening: Promise<{ close(): void }>): Promise<LinesError> =>
    opening.then(
      () => Promise.reject(new Error("the board opened")),
      (error: unknown) => (error instanceof LinesError ? error : Promise.reject(error as Error)),
    );

  afterEach(() => {
    device.held.clear();
    device.forbidden.clear();
  });

  it("are told as such, and the chain's word goes round through them", async () => {
    const lines = await openChainLines(chain);
    expect(lines.through).toBe("character-device");
    expect(lines.chainCheck()).toEqual({ kind: "sound" });
    lines.close();
    expect([...device.held.keys()]).toEqual([]);
  });

  it("are second choice: where sysfs has the pins, those are opened", async () => {
    const root = join(device.access.deviceFolder ?? "", "sysfs");
    mkdirSync(join(root, "gpiochip512"), { recursive: true });
    for (const [name, content] of [
      ["label", "pinctrl-bcm2711"],
      ["base", "512"],
      ["ngpio", "58"],
    ] as const)
      // prettier-ignore
      writeFileSync(join(root, "gpiochip512", name), `${content}\n`);
    // The pin stands exported already, so that nobody waits for udev.
    mkdirSync(join(root, "gpio536"));
    for (const name of ["export", "unexport"]) writeFileSync(join(root, name), "");
    class Gpio {
      readSync = (): 0 | 1 => 1;
      writeSync = (): void => undefined;
      direction = (): string => "in";
      setDirection = (): void => undefined;
      unexport = (): void => undefined;
    }
    const opened = await openPins([{ name: "dataIn", bcm: 24, direction: "in" }], {
      ...device.access,
      sysfsRoot: root,
      loadDriver: () => Promise.resolve({ Gpio }),
    });
    expect(opened.through).toBe("sysfs");
    const without = await openPins([{ name: "dataIn", bcm: 24, direction: "in" }], {
      ...device.access,
      sysfsRoot: root,
      loadDriver: () => Promise.reject(new Error("Cannot find package 'onoff'")),
    });
    expect(without.through).toBe("character-device");
  });

  it("that something else holds are named, and no other is kept", async () => {
    device.held.set(24, "elsewhere");
    expect(await refusal(openChainLines(chain))).toMatchObject({
      code: "pin-in-use",
      facts: { signal: "dataIn", bcm: 24 },
    });
    expect([...device.held]).toEqual([[24, "elsewhere"]]);
  });

  it("of a chip that this account may not open are refused by its path", async () => {
    device.forbidden.add("gpiochip4");
    const error = await refusal(openChainLines(chain));
    expect(error.code).toBe("no-rights");
    expect(String(error.facts["path"])).toMatch(/gpiochip4$/);
  });

  it("are not looked for on the chip of another computer", async () => {
    const other = new CharacterDouble(board, { gpiochip0: { label: "INT34C5:00", pinCount: 300 } });
    expect(await refusal(openChainLines({ ...chain, ...other.access }))).toMatchObject({
      code: "unknown-chip",
      facts: { labels: "INT34C5:00" },
    });
    other.remove();
  });

  it("that do not exist fail by their number", async () => {
    const wrong = { ...chain, pins: { ...pins, load: 60 } };
    expect(await refusal(openChainLines(wrong))).toMatchObject({
      code: "pin-failed",
      facts: { signal: "load", bcm: 60, errno: "EINVAL" },
    });
    expect(device.held.size).toBe(0);
  });

  it.each<[string, Parameters<typeof openChainLines>[0]]>([
    ["there is no chip at all", { ...chain, deviceFolder: join("/", "nowhere") }],
    [
      "its library is not installed",
      { ...chain, loadCharacterDriver: () => Promise.reject(new Error("none")) },
    ],
  ])("are not had where %s: then it is said that the kernel has no sysfs", async (_, options) => {
    expect((await refusal(openChainLines(options))).code).toBe("no-sysfs-gpio");
  });
});
