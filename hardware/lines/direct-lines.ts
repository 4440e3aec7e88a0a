import { type LineReading, type Lines, LinesError } from "./lines.ts";
import { type GpioAccess, openPins, type PinsThrough } from "./open-pins.ts";
import type { OpenPin } from "./pins.ts";

export interface DirectOptions extends GpioAccess {
  /** BCM number of line i. */
  pins: readonly number[];
  /** From the last release to the next reading at least. */
  settleUs?: number;
}

/**
 * Opens a board without chips: line i is a pin with a pull-up on the board; low pulls it, an input releases it.
 * Such a board has no code contacts.
 *
 * @throws LinesError as `openPins`, and `board-not-found` where every released line reads low: the pins are
 * pulled down in the boot configuration, so this is what an absent or unpowered board looks like.
 */
export async function openDirectLines({
  pins: numbers,
  settleUs = 0,
  ...access
}: DirectOptions): Promise<Lines & { through: PinsThrough }> {
  const { pins: byName, through } = await openPins(
    numbers.map((bcm, line) => ({ name: `line ${line}`, bcm, direction: "in" as const })),
    access,
  );
  const pins: OpenPin[] = numbers.map((_, line) => byName[`line ${line}`]).filter((pin) => pin !== undefined);
  const lines = { ...directLines(pins, settleUs), through };
  try {
    const { lines: readings } = lines.exchange(new Uint8Array(pins.length));
    if (readings.every((low) => low === 1)) throw new LinesError("board-not-found", { wiring: "direct" });
  } catch (error) {
    lines.close();
    throw error;
  }
  return lines;
}

function directLines(pins: readonly OpenPin[], settleUs: number): Lines {
  const pulled = new Uint8Array(pins.length);
  let isClosed = false;
  let settledNs = 0n;

  const setPulled = (line: number, pull: boolean) => {
    pins[line]?.setDirection(pull ? "low" : "in");
    pulled[line] = pull ? 1 : 0;
  };

  return {
    lineCount: pins.length,
    codeCount: 0,
    exchange: (next: Uint8Array): LineReading => {
      while (process.hrtime.bigint() < settledNs);
      const lines = Uint8Array.from(pins, (pin) => 1 - pin.read());
      // Releases come first, so that a line has the longest time to rise before it is read.
      pins.forEach((_, line) => pulled[line] === 1 && next[line] !== 1 && setPulled(line, false));
      pins.forEach((_, line) => pulled[line] === 0 && next[line] === 1 && setPulled(line, true));
      settledNs = process.hrtime.bigint() + BigInt(Math.round(settleUs * 1_000));
      return { lines, codes: new Uint8Array(0) };
    },
    close: () => {
      if (isClosed) return;
      isClosed = true;
      for (const pin of pins) {
        try {
          pin.setDirection("in");
        } catch {
          // The other lines are still released.
        }
        pin.close();
      }
    },
  };
}
