import { readdirSync } from "node:fs";
import { join } from "node:path";
import { errnoOf } from "./errno.ts";
import { headerChipLabels } from "./gpio-base.ts";
import { LinesError } from "./lines.ts";
import { onPin, takePin } from "./pin-attempts.ts";
import type { OpenPin, PinRequest } from "./pins.ts";

/** What the makers use of `node-libgpiod`; a stand-in for tests offers the same. */
export interface CharacterDriver {
  Chip: new (device: string) => CharacterChip;
  Line: new (chip: CharacterChip, offset: number) => CharacterLine;
  Bulk: new (chip: CharacterChip, offsets: number[]) => CharacterBulk;
}
export interface CharacterChip {
  readonly label: string;
  readonly numberOfLines: number;
}
export interface CharacterLine {
  requestInputMode(consumer: string): void;
  requestOutputMode(consumer: string, value: 0 | 1): void;
  getValue(): 0 | 1;
  setValue(value: 0 | 1): void;
  release(): void;
}
export interface CharacterBulk {
  setDirectionInput(): void;
  setDirectionOutput(values: (0 | 1)[]): void;
}

/** The name under which the kernel lists who holds a pin. */
const holder = "spurwise";

/** The chips of the kernel's character device, by path. */
export function characterDevices(deviceFolder: string): string[] {
  try {
    return readdirSync(deviceFolder)
      .filter((name) => /^gpiochip\d+$/.test(name))
      .map((name) => join(deviceFolder, name));
  } catch {
    return [];
  }
}

/**
 * Opens pins of the header's chip in the order given, through the kernel's character device. There a BCM number is
 * the pin's place on its chip. When one cannot be had, those already open are given back in reverse order.
 *
 * @throws LinesError `unknown-chip`, `no-rights`, `pin-in-use`, `pin-failed`
 */
export function openCharacterPins<Name extends string>(
  requests: readonly PinRequest<Name>[],
  driver: CharacterDriver,
  deviceFolder: string,
): Record<Name, OpenPin> {
  const chip = headerChip(driver, characterDevices(deviceFolder));
  const pins: [Name, OpenPin][] = [];
  try {
    for (const request of requests) pins.push([request.name, openPin(driver, chip, request)]);
  } catch (error) {
    for (const [, pin] of pins.reverse()) pin.close();
    throw error;
  }
  return Object.fromEntries(pins) as Record<Name, OpenPin>;
}

/** By its label, as in sysfs; the header is the largest where several have it. */
function headerChip({ Chip }: CharacterDriver, devices: readonly string[]): CharacterChip {
  const chips = devices.map((path) => {
    try {
      const chip = new Chip(path);
      return { chip, label: chip.label };
    } catch (cause) {
      throw new LinesError("no-rights", { path, errno: errnoOf(cause) }, cause);
    }
  });
  const [header] = chips
    .filter(({ label }) => (headerChipLabels as readonly string[]).includes(label))
    .sort((a, b) => b.chip.numberOfLines - a.chip.numberOfLines);
  if (header !== undefined) return header.chip;
  throw new LinesError("unknown-chip", { labels: chips.map(({ label }) => label).sort().join(", ") }); // prettier-ignore
}

function openPin(
  { Line, Bulk }: CharacterDriver,
  chip: CharacterChip,
  { name, bcm, direction }: PinRequest<string>,
): OpenPin {
  const facts = { signal: name, bcm };
  const line = takePin(facts, "request", () => {
    const taken = new Line(chip, bcm);
    if (direction === "in") taken.requestInputMode(holder);
    else taken.requestOutputMode(holder, direction === "high" ? 1 : 0);
    return taken;
  });
  // The library turns a pin round only as one of several; both are kept, because it lets go of what is forgotten.
  const alone = onPin(facts, "request", () => new Bulk(chip, [bcm]));
  return {
    read: () => onPin(facts, "read", () => line.getValue()),
    write: (value) => onPin(facts, "write", () => line.setValue(value)),
    setDirection: (next) =>
      onPin(facts, "direction", () => {
        if (next === "in") alone.setDirectionInput();
        else alone.setDirectionOutput([next === "high" ? 1 : 0]);
      }),
    close: () => {
      try {
        line.release();
      } catch {
        // The board is going away; the pull-ups on it hold what matters.
      }
    },
  };
}
