import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import type { Lines } from "../../../hardware/lines/lines.ts";
import { linesContract } from "../lines/lines-contract.ts";
import * as emulated from "./emulated-gpio.ts";

const { control, freshKernel, putDirect, report, smallPins } = emulated;

const freshSmall = (): void => {
  freshKernel();
  putDirect(smallPins);
};

linesContract("a direct board of 24 lines", async () => {
  freshSmall();
  return {
    lines: await openDirectLines({ pins: smallPins }),
    join: emulated.join,
    part: emulated.part,
    pulledLines: () => report().pulled,
  };
});

describe("a direct board", () => {
  let lines: Lines;
  beforeEach(async () => {
    freshSmall();
    lines = await openDirectLines({ pins: smallPins });
  });
  afterEach(() => lines.close());

  it("never drives a line high: a lead may join it to one that is pulled", () => {
    for (let pattern = 0; pattern < 50; pattern += 1) {
      lines.exchange(
        Uint8Array.from({ length: 24 }, (_, line) => ((pattern * 7 + line * line) % 3 === 0 ? 1 : 0)),
      );
    }
    lines.close();
    expect(report().pullEvents).toBeGreaterThan(0);
    expect(report().drivenHighEvents).toBe(0);
  });

  it("reads each pin once a pattern and touches only the lines that change", () => {
    lines.exchange(Uint8Array.from({ length: 24 }, (_, line) => (line < 12 ? 1 : 0)));
    control("clear-counts");
    lines.exchange(Uint8Array.from({ length: 24 }, (_, line) => (line < 13 ? 1 : 0)));
    expect(report()).toMatchObject({ reads: 24, writes: 0, directionWrites: 1 });
  });

  it("releases the lines that a crashed run left pulled", async () => {
    lines.exchange(new Uint8Array(24).fill(1));
    expect(report().pulled).toHaveLength(24);
    const again = await openDirectLines({ pins: smallPins });
    expect(report().pulled).toEqual([]);
    again.close();
  });
});
