import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { findGpioChip } from "../../../hardware/lines/gpio-base.ts";
import { openPins } from "../../../hardware/lines/open-pins.ts";

/** Folders as the kernel shows them; what needs the pins to work is checked on the emulated sysfs. */
describe("the chip behind the header", () => {
  let root: string;
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), "gpio-"));
  });
  afterEach(() => rmSync(root, { recursive: true }));

  const withPins = (): void => writeFileSync(join(root, "export"), "");
  const addChip = (folder: string, label: string, base: number, pinCount: number): void => {
    mkdirSync(join(root, folder));
    for (const [name, content] of Object.entries({ label, base, ngpio: pinCount }))
      writeFileSync(join(root, folder, name), `${content}\n`);
  };

  it("is not looked for where the kernel shows no pins: that is said first", () => {
    expect(() => findGpioChip(join(root, "none"))).toThrowError(
      expect.objectContaining({ code: "no-sysfs-gpio" }),
    );
    addChip("gpiochip512", "pinctrl-bcm2711", 512, 58);
    expect(() => findGpioChip(root)).toThrowError(expect.objectContaining({ code: "no-sysfs-gpio" }));
  });

  it("is told from the expanders listed before it", () => {
    withPins();
    addChip("gpiochip504", "raspberrypi-exp-gpio", 504, 8);
    addChip("gpiochip512", "pinctrl-bcm2711", 512, 58);
    addChip("gpiochip1024", "brcmvirt-gpio", 1024, 2);
    expect(findGpioChip(root)).toEqual({ label: "pinctrl-bcm2711", base: 512, pinCount: 58 });
  });

  it("is the one with most pins where two carry the label", () => {
    withPins();
    addChip("gpiochip400", "pinctrl-rp1", 400, 4);
    addChip("gpiochip571", "pinctrl-rp1", 571, 54);
    expect(findGpioChip(root).base).toBe(571);
  });

  it("is missed by name: the labels seen are in the refusal", () => {
    withPins();
    addChip("gpiochip0", "INT34C5:00", 0, 300);
    expect(() => findGpioChip(root)).toThrowError(
      expect.objectContaining({ code: "unknown-chip", facts: { labels: "INT34C5:00" } }),
    );
  });

  it("is there, but without the driver package no pin is opened", async () => {
    withPins();
    addChip("gpiochip0", "pinctrl-bcm2835", 0, 54);
    const opening = openPins([{ name: "load", bcm: 25, direction: "high" }], {
      sysfsRoot: root,
      loadDriver: () => Promise.reject(new Error("Cannot find package 'onoff'")),
    });
    await expect(opening).rejects.toMatchObject({ code: "no-gpio-driver" });
  });
});
