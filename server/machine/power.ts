import { readFileSync } from "node:fs";
import { type MachineView, type PowerTrouble, powerTroubles } from "../../shared/protocol/keep-view.ts";

/** Where the kernel of a Raspberry Pi says it. */
const throttledFile = "/sys/devices/platform/soc/soc:firmware/get_throttled";
const sinceStartShift = 16;

/**
 * What the firmware's word says, given in hexadecimal: bits 0 to 3 are under-voltage, frequency capped, throttled, soft
 * temperature limit now, bits 16 to 19 the same since the start. Undefined for a text that is no such word.
 * Source: Raspberry Pi documentation, "get_throttled".
 */
export function powerOf(text: string): NonNullable<MachineView["power"]> | undefined {
  const [, digits] = /^(?:throttled=)?(?:0x)?([0-9a-f]{1,8})\s*$/i.exec(text) ?? [];
  if (digits === undefined) return undefined;
  const word = Number.parseInt(digits, 16);
  const from = (shift: number): PowerTrouble[] =>
    powerTroubles.filter((_trouble, bit) => Math.floor(word / 2 ** (bit + shift)) % 2 === 1);
  return { now: from(0), sinceStart: from(sinceStartShift) };
}

/** How the power is on this machine; null where it is not said. */
export function readPower(file: string = throttledFile): MachineView["power"] {
  try {
    return powerOf(readFileSync(file, "utf8")) ?? null;
  } catch {
    return null;
  }
}
