import { afterEach, describe, expect, it } from "vitest";
import { openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import type { LineReading } from "../../../hardware/lines/lines.ts";
import { settleTimeUs } from "../../../hardware/lines/settle-time.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { BareBehindPins, type BoardBehindPins, ChainBehindPins } from "./board-behind-pins.ts";
import { CharacterDouble } from "./character-double.ts";

/** Lines on a long lead: one that was pulled still reads low for a time after its release. */
class SlowLines extends SimulatedLines {
  readonly #riseNs: bigint;
  readonly #lowUntilNs = new Map<number, bigint>();

  constructor(lineCount: number, riseUs: number) {
    super(lineCount);
    this.#riseNs = BigInt(riseUs) * 1_000n;
  }

  override exchange(next: Uint8Array): LineReading {
    const reading = super.exchange(next);
    const nowNs = process.hrtime.bigint();
    reading.lines.forEach((low, line) => {
      if (low === 1) this.#lowUntilNs.set(line, nowNs + this.#riseNs);
      else if (nowNs < (this.#lowUntilNs.get(line) ?? 0n)) reading.lines[line] = 1;
    });
    return reading;
  }
}

const lineCount = 24;
const chainPins = { shiftClock: 17, dataOut: 27, latch: 22, load: 23, dataIn: 24, outputEnable: 25 };
const barePins = Array.from({ length: lineCount }, (_, line) => line + 4);
const pulledLine = lineIndex(3);

const boards = {
  "a chain": {
    make: (copper: SimulatedLines): BoardBehindPins => new ChainBehindPins(chainPins, lineCount, 0, copper),
    open: (device: CharacterDouble, settleUs: number) =>
      openChainLines({ pins: chainPins, lineCount, codeCount: 0, settleUs, ...device.access }),
  },
  "a board without chips": {
    make: (copper: SimulatedLines): BoardBehindPins => new BareBehindPins(barePins, copper),
    open: (device: CharacterDouble, settleUs: number) =>
      openDirectLines({ pins: barePins, settleUs, ...device.access }),
  },
};

describe.each(Object.entries(boards))("a line of %s that was pulled and let go", (_, { make, open }) => {
  let device: CharacterDouble;
  afterEach(() => device.remove());

  /** What the line reads right after it was let go. */
  const readAfterRelease = async (riseUs: number, settleUs: number): Promise<number | undefined> => {
    device = new CharacterDouble(make(new SlowLines(lineCount, riseUs)), {
      gpiochip0: { label: "pinctrl-rp1", pinCount: 54 },
    });
    const lines = await open(device, settleUs);
    const released = new Uint8Array(lineCount);
    lines.exchange(Uint8Array.from(released, (_, line) => (line === pulledLine ? 1 : 0)));
    lines.exchange(released);
    const reading = lines.exchange(released).lines[pulledLine];
    lines.close();
    return reading;
  };

  it("is read once it has had the time to rise", async () => {
    expect(await readAfterRelease(20_000, 20_000)).toBe(0);
  });

  it("would still read low without that time", async () => {
    expect(await readAfterRelease(60_000_000, 0)).toBe(1);
  });
});

// v(t) = V (1 - e^(-t/RC)), as in every handbook of electronics: 70 % of the supply is reached after 1.204 RC.
describe("the time to rise", () => {
  it("is a quarter more than a line's pull-up and capacitance need to reach a sure high", () => {
    const wiring = {
      kind: "direct",
      pins: [],
      electrics: { pullUpOhm: 4_700, capacitancePf: 2_200 },
    } as const;
    expect(settleTimeUs(wiring as never)).toBeCloseTo(1.25 * 1.204 * 4.7e3 * 2.2e-9 * 1e6, 2);
  });
});
