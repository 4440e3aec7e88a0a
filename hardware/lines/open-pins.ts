import { closeSync, existsSync, openSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type CharacterDriver, characterDevices, openCharacterPins } from "./character-pins.ts";
import { findGpioChip, gpioRoot } from "./gpio-base.ts";
import { LinesError } from "./lines.ts";
import { onPin, takePin } from "./pin-attempts.ts";
import type { OpenPin, PinDirection, PinRequest } from "./pins.ts";

/** What the makers use of `onoff`'s Gpio; a stand-in for speed runs offers the same. */
export interface GpioPin {
  readSync(): 0 | 1;
  writeSync(value: 0 | 1): void;
  direction(): string;
  setDirection(direction: PinDirection): void;
  unexport(): void;
}
export interface GpioDriver {
  Gpio: new (gpio: number, direction: PinDirection) => GpioPin;
}

/**
 * Where pins come from. The defaults are the kernel's sysfs and the `onoff` package, and where those cannot be had
 * its character device and the `node-libgpiod` package.
 */
export interface GpioAccess {
  sysfsRoot?: string;
  loadDriver?: () => Promise<GpioDriver>;
  deviceFolder?: string;
  loadCharacterDriver?: () => Promise<CharacterDriver>;
}

/** Which of the kernel's interfaces the pins were opened through. */
export type PinsThrough = "sysfs" | "character-device";

/**
 * Opens pins in the order given, each in its direction: through sysfs, and only where the kernel or the driver for
 * that is missing through the character device.
 *
 * @throws LinesError `no-gpio-driver`, `no-sysfs-gpio`, `unknown-chip`, `no-rights`, `pin-in-use`, `pin-failed`
 */
export async function openPins<Name extends string>(
  requests: readonly PinRequest<Name>[],
  access: GpioAccess = {},
): Promise<{ pins: Record<Name, OpenPin>; through: PinsThrough }> {
  const { deviceFolder = "/dev", loadCharacterDriver = loadLibgpiod } = access;
  try {
    return { pins: await openSysfsPins(requests, access), through: "sysfs" };
  } catch (error) {
    const isWithoutSysfs =
      error instanceof LinesError && (error.code === "no-sysfs-gpio" || error.code === "no-gpio-driver");
    if (!isWithoutSysfs || characterDevices(deviceFolder).length === 0) throw error;
    const driver = await loadCharacterDriver().catch(() => undefined);
    if (driver === undefined) throw error;
    return { pins: openCharacterPins(requests, driver, deviceFolder), through: "character-device" };
  }
}

/** When one pin cannot be had, those already open are given back in reverse order. */
async function openSysfsPins<Name extends string>(
  requests: readonly PinRequest<Name>[],
  { sysfsRoot = gpioRoot, loadDriver = loadOnoff }: GpioAccess,
): Promise<Record<Name, OpenPin>> {
  // The kernel is looked at before the driver is loaded, so that a kernel without pins is said as such.
  const chip = findGpioChip(sysfsRoot);
  const { Gpio } = await loadDriver().catch((cause: unknown) => {
    throw new LinesError("no-gpio-driver", {}, cause);
  });
  const pins: [Name, OpenPin][] = [];
  const exportedAhead = await exportAhead(
    requests.map(({ bcm }) => chip.base + bcm),
    sysfsRoot,
  );
  try {
    for (const request of requests) pins.push([request.name, openPin(Gpio, chip.base, request, sysfsRoot)]);
  } catch (error) {
    for (const [, pin] of pins.reverse()) pin.close();
    for (const number of exportedAhead) tryTo(() => writeFileSync(join(sysfsRoot, "unexport"), `${number}`));
    throw error;
  }
  return Object.fromEntries(pins) as Record<Name, OpenPin>;
}

/**
 * Exports all pins at once and waits until udev has handed them over, which takes seconds on a slow card: one after
 * the other they would take as many times as long, with the driver trying in a closed loop meanwhile. What cannot be
 * exported here is left to the driver, which says why. Gives the numbers that were exported.
 */
async function exportAhead(numbers: readonly number[], sysfsRoot: string): Promise<number[]> {
  const exported = numbers.filter(
    (number) =>
      !existsSync(join(sysfsRoot, `gpio${number}`)) &&
      tryTo(() => writeFileSync(join(sysfsRoot, "export"), `${number}`)),
  );
  const files = exported.flatMap((number) =>
    ["value", "direction"].map((name) => join(sysfsRoot, `gpio${number}`, name)),
  );
  for (let waitedMs = 0; waitedMs < longestHandOverMs && !files.every(isWritable); waitedMs += handOverLookMs)
    await new Promise((resolve) => setTimeout(resolve, handOverLookMs));
  return exported;
}

const handOverLookMs = 20;
const longestHandOverMs = 8_000;

function tryTo(action: () => void): boolean {
  try {
    action();
    return true;
  } catch {
    return false;
  }
}

/** Loaded only here, and only in the scanner child: its native part takes the process down with a worker thread. */
async function loadOnoff(): Promise<GpioDriver> {
  const { Gpio } = await import("onoff");
  return { Gpio };
}

/** Built against libgpiod 1; loaded only where sysfs cannot be had. */
async function loadLibgpiod(): Promise<CharacterDriver> {
  const { Chip, Line, Bulk } = await import("node-libgpiod");
  return { Chip, Line, Bulk };
}

function openPin(
  Gpio: GpioDriver["Gpio"],
  base: number,
  { name, bcm, direction }: PinRequest<string>,
  sysfsRoot: string,
): OpenPin {
  const number = base + bcm;
  const facts = { signal: name, bcm };
  const gpio = takePin(facts, "export", () => new Gpio(number, direction));
  // A pin left exported by an earlier run is taken over, and then onoff says nothing when a setting fails.
  const wanted = direction === "in" ? "in" : "out";
  if (onPin(facts, "direction", () => gpio.direction()) !== wanted) {
    gpio.unexport();
    throw isWritable(join(sysfsRoot, `gpio${number}`, "direction"))
      ? new LinesError("pin-failed", { ...facts, call: "direction", errno: "" })
      : new LinesError("no-rights", facts);
  }
  return {
    read: () => onPin(facts, "read", () => gpio.readSync()),
    write: (value) => onPin(facts, "write", () => gpio.writeSync(value)),
    setDirection: (next) => onPin(facts, "direction", () => gpio.setDirection(next)),
    close: () => {
      try {
        gpio.unexport();
      } catch {
        // The board is going away; the pull-ups on it hold what matters.
      }
    },
  };
}

function isWritable(path: string): boolean {
  return tryTo(() => closeSync(openSync(path, "r+")));
}
