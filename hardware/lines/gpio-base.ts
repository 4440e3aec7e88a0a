import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { LinesError } from "./lines.ts";
import { errnoOf } from "./errno.ts";

/** Where the kernel shows its pins, and where `onoff` looks for them. */
export const gpioRoot = "/sys/class/gpio";

/** Names the kernel gives to the 40-pin header's chip: Pi 0 to 3, Pi 4, Pi 5. */
export const headerChipLabels = ["pinctrl-bcm2835", "pinctrl-bcm2711", "pinctrl-rp1"] as const;

export interface GpioChip {
  label: string;
  /** Number of the chip's pin 0 in sysfs; it moves with kernel and model. */
  base: number;
  pinCount: number;
}

/**
 * Finds the chip behind the 40-pin header by its label. A BCM number plus its base is the sysfs number.
 *
 * @throws LinesError `no-sysfs-gpio` where the kernel shows no pins at all, `unknown-chip` with the labels seen
 * where none is a header's, `no-rights` where the chip may not be read.
 */
export function findGpioChip(sysfsRoot: string = gpioRoot): GpioChip {
  const chips = chipFolders(sysfsRoot).map((name) => readChip(join(sysfsRoot, name)));
  const header = chips
    .filter(({ label }) => (headerChipLabels as readonly string[]).includes(label))
    // Some kernels list the header's chip beside a smaller one of the same label: the header is the larger.
    .sort((a, b) => b.pinCount - a.pinCount)[0];
  if (header === undefined) {
    const labels = chips.map(({ label }) => label).sort();
    throw new LinesError("unknown-chip", { labels: labels.length === 0 ? "none" : labels.join(", ") });
  }
  return header;
}

function chipFolders(sysfsRoot: string): string[] {
  try {
    const names = readdirSync(sysfsRoot);
    if (names.includes("export")) return names.filter((name) => /^gpiochip\d+$/.test(name));
  } catch (cause) {
    if (errnoOf(cause) !== "ENOENT") throw new LinesError("no-rights", { path: sysfsRoot }, cause);
  }
  throw new LinesError("no-sysfs-gpio", { path: sysfsRoot });
}

function readChip(folder: string): GpioChip {
  try {
    const read = (name: string) => readFileSync(join(folder, name), "utf8").trim();
    return { label: read("label"), base: Number(read("base")), pinCount: Number(read("ngpio")) };
  } catch (cause) {
    throw new LinesError("no-rights", { path: folder }, cause);
  }
}
