import { writeFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import { findGpioChip, headerChipLabels } from "../../../hardware/lines/gpio-base.ts";
import { LinesError } from "../../../hardware/lines/lines.ts";
import {
  control,
  freshKernel,
  freshWorkshop,
  putChain,
  putDirect,
  report,
  smallPins,
  workshop,
  workshopPins,
} from "./emulated-gpio.ts";

const exportedPins = (): string[] =>
  Object.entries(report().pins).flatMap(([bcm, { isExported }]) => (isExported ? [bcm] : []));

const refusal = async (opening: Promise<{ close(): void }>): Promise<LinesError> => {
  const outcome = await opening.then(
    (lines) => lines.close(),
    (error: unknown) => error,
  );
  if (!(outcome instanceof LinesError)) throw new Error("the board opened", { cause: outcome });
  return outcome;
};

describe("the header's chip", () => {
  it.each([0, 399, 512, 522, 569, 571].flatMap((base) => headerChipLabels.map((label) => ({ base, label }))))(
    "is found by its label $label with base $base, and its pins work",
    async ({ base, label }) => {
      freshKernel(base, label);
      putDirect(smallPins);
      expect(findGpioChip()).toMatchObject({ base, label });
      const lines = await openDirectLines({ pins: smallPins });
      lines.exchange(Uint8Array.from({ length: 24 }, (_, line) => (line === 5 ? 1 : 0)));
      expect(report().pulled).toEqual([5]);
      lines.close();
    },
  );

  it("is not taken for another: a computer without one is refused with the labels it has", async () => {
    control("reset", "chip INT34C5:00 512 54");
    expect(await refusal(openChainLines(workshop))).toMatchObject({
      code: "unknown-chip",
      facts: { labels: "INT34C5:00" },
    });
  });
});

describe("a board that is asked for and cannot be had", () => {
  beforeEach(freshWorkshop);

  it("is refused when a pin is held by a kernel driver, and no pin is kept", async () => {
    control("hold 9");
    expect(await refusal(openChainLines(workshop))).toMatchObject({
      code: "pin-in-use",
      facts: { signal: "dataIn", bcm: 9 },
    });
    expect(exportedPins()).toEqual([]);
  });

  it("opens once the pin is free again", async () => {
    control("hold 9");
    await refusal(openChainLines(workshop));
    control("free 9");
    const lines = await openChainLines(workshop);
    expect(lines.lineCount).toBe(206);
    lines.close();
  });

  it("is refused when a pin of the description is not on the chip", async () => {
    const pins = { ...workshopPins, latch: 54 };
    expect(await refusal(openChainLines({ ...workshop, pins }))).toMatchObject({
      code: "pin-failed",
      facts: { signal: "latch", bcm: 54, call: "export", errno: "EINVAL" },
    });
    expect(exportedPins()).toEqual([]);
  });

  it("is refused when no board is there, chain or direct, and opens by itself when it comes", async () => {
    freshKernel();
    expect(await refusal(openChainLines(workshop))).toMatchObject({ code: "board-not-found" });
    expect(await refusal(openDirectLines({ pins: smallPins }))).toMatchObject({ code: "board-not-found" });
    expect(exportedPins()).toEqual([]);
    putChain({ outputChipCount: 26, inputChipCount: 26, codeChipCount: 15, pins: workshopPins });
    (await openChainLines(workshop)).close();
  });
});

describe("a board after a run that was killed", () => {
  it("is taken over with its pins still exported and its outputs as they were", async () => {
    freshWorkshop();
    const killed = await openChainLines(workshop);
    killed.exchange(new Uint8Array(206).fill(1));
    expect(report().pulled).toHaveLength(206);
    const lines = await openChainLines(workshop);
    expect(report().pulled).toEqual([]);
    lines.exchange(Uint8Array.from({ length: 206 }, (_, line) => (line === 77 ? 1 : 0)));
    expect(report().pulled).toEqual([77]);
    lines.close();
  });
});

describe("an account of its own", () => {
  const gpioGroup = 997;
  const nobody = 65534;
  const become = (group: number): void => {
    process.setgroups?.([group]);
    process.setegid?.(group);
    process.seteuid?.(nobody);
  };
  const root = (): void => {
    process.seteuid?.(0);
    process.setegid?.(0);
    process.setgroups?.([0]);
  };

  beforeEach(async () => {
    // Once as root, so that the driver is loaded before the account changes.
    freshWorkshop();
    (await openChainLines(workshop)).close();
    // What Raspberry Pi OS's udev rule does to every pin some time after its export.
    control(`owner 0 ${gpioGroup} ${0o770} 60`);
  });
  afterEach(root);

  it("in the gpio group opens the board, though udev hands over each pin only after a while", async () => {
    become(gpioGroup);
    const lines = await openChainLines(workshop);
    lines.exchange(Uint8Array.from({ length: 206 }, (_, line) => (line === 8 ? 1 : 0)));
    root();
    expect(report().pulled).toEqual([8]);
    lines.close();
  });

  it("in the gpio group opens the board though udev takes three seconds over each pin", async () => {
    control(`owner 0 ${gpioGroup} ${0o770} 3000`);
    become(gpioGroup);
    const lines = await openChainLines(workshop);
    root();
    expect(exportedPins()).toHaveLength(7);
    lines.close();
    expect(exportedPins()).toEqual([]);
  });

  it("outside the group is refused for want of rights", async () => {
    become(nobody);
    const error = await refusal(openChainLines(workshop));
    root();
    expect(error).toMatchObject({ code: "no-rights", facts: { signal: "outputEnable", bcm: 24 } });
  });

  it("that may write a pin's value but not turn it is refused for want of rights", async () => {
    writeFileSync("/sys/class/gpio/export", String(512 + 24));
    control(`owner 0 ${gpioGroup} ${0o770} 0`, "lock-direction 24");
    become(gpioGroup);
    const error = await refusal(openChainLines(workshop));
    root();
    expect(error).toMatchObject({ code: "no-rights", facts: { signal: "outputEnable" } });
  });
});
