import { describe, expect, it } from "vitest";
import type { Lines } from "../../../hardware/lines/lines.ts";
import { seeded } from "../../seeded.ts";
import { freshWorkshop, join, part, workshop } from "./emulated-gpio.ts";
import { openWithSlip, slips } from "./slip-drivers.ts";

/**
 * Exchanges random patterns while a lead moves about, and counts the readings that are not what copper gives:
 * a line low where it or the line at the other end of the lead was pulled.
 */
function countWrongReadings(lines: Lines): number {
  const random = seeded(7);
  const pulls = (): Uint8Array =>
    Uint8Array.from({ length: lines.lineCount }, () => (random() < 0.3 ? 1 : 0));
  let pulled = pulls();
  lines.exchange(pulled);
  let wrong = 0;
  for (let turn = 0; turn < 6; turn += 1) {
    const a = Math.floor(random() * 100);
    const b = 100 + Math.floor(random() * 100);
    join(a, b);
    const next = pulls();
    const reading = lines.exchange(next).lines;
    const either = pulled[a] === 1 || pulled[b] === 1 ? 1 : 0;
    reading.forEach((low, line) => {
      if (low !== (line === a || line === b ? either : pulled[line])) wrong += 1;
    });
    part(a, b);
    pulled = next;
  }
  return wrong;
}

describe("the emulated chips tell a right driver from a wrong one", () => {
  it("a driver without a slip reads what the copper gives", async () => {
    freshWorkshop();
    const lines = await openWithSlip(workshop, "none");
    expect(countWrongReadings(lines)).toBe(0);
    lines.close();
  });

  it.each(slips)("a driver with the slip `%s` reads something else", async (slip) => {
    freshWorkshop();
    const lines = await openWithSlip(workshop, slip);
    expect(countWrongReadings(lines)).toBeGreaterThan(0);
    lines.close();
  });
});
