import { describe, expect, it } from "vitest";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { SpinningLines } from "../../../hardware/lines/spinning-lines.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import { linesContract } from "./lines-contract.ts";

linesContract("the stand-in that spins", () => {
  const inner = new SimulatedLines(64, 32);
  let nowMs = 0;
  return {
    lines: new SpinningLines(inner, 6, () => (nowMs += 0.5)),
    join: (a, b) => inner.join(lineIndex(a), lineIndex(b)),
    part: (a, b) => inner.part(lineIndex(a), lineIndex(b)),
    setCode: (index, on) => inner.setCode(index, on),
    pulledLines: () => inner.pulledLines(),
  };
});

describe("the stand-in that spins", () => {
  it("counts the calls of a chain: load, a read and a clock a bit, data when it changes, latch", () => {
    const lines = new SpinningLines(new SimulatedLines(206), 0, () => 0);
    lines.exchange(new Uint8Array(206));
    // 26 chips: 208 clocks up and down, 206 reads, 2 for load, 2 for latch; data rests high and does not change.
    expect(lines.callCount).toBe(2 * 208 + 206 + 4);
    lines.callCount = 0;
    const everyOther = Uint8Array.from({ length: 206 }, (_, line) => line % 2);
    lines.exchange(everyOther);
    expect(lines.callCount).toBe(2 * 208 + 206 + 4 + 206);
  });

  it("takes as long as the calls take", () => {
    let nowMs = 0;
    const lines = new SpinningLines(new SimulatedLines(206), 6, () => (nowMs += 0.01));
    const startMs = nowMs;
    lines.exchange(new Uint8Array(206));
    // 626 calls of 6 µs.
    expect(nowMs - startMs).toBeGreaterThanOrEqual(3.756);
    expect(nowMs - startMs).toBeLessThan(3.8);
  });
});
