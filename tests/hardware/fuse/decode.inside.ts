import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type ChainLines, openChainLines } from "../../../hardware/lines/chain-lines.ts";
import { decodeLines } from "../../../hardware/scan/decode.ts";
import { openDirectLines } from "../../../hardware/lines/direct-lines.ts";
import { joinedGroups } from "../../../hardware/lines/line-model.ts";
import { byLeast, randomGroups } from "../scan/random-copper.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";
import {
  control,
  freshKernel,
  freshWorkshop,
  putDirect,
  report,
  smallPins,
  workshop,
} from "./emulated-gpio.ts";

/** Groups mostly of two, as leads make them, some of three to six, as stacked plugs do. */
function groupsOf(lineCount: number, seed: number): ReturnType<typeof randomGroups> {
  const random = seeded(seed);
  const sizes = Array.from({ length: lineCount }, () => {
    const chance = random();
    return chance < 0.3 ? 1 : chance < 0.9 ? 2 : 3 + Math.floor(random() * 4);
  });
  return randomGroups(lineCount, sizes, random);
}

const wire = (groups: readonly number[][]): void =>
  control(...groups.flatMap((group) => group.slice(1).map((line, index) => `join ${group[index]} ${line}`)));

describe("a wiring of the workshop board, from copper through chips, kernel and onoff", () => {
  let lines: ChainLines;
  beforeEach(async () => {
    freshWorkshop();
    lines = await openChainLines(workshop);
  });
  afterEach(() => lines.close());

  it("decodes exactly, whatever is plugged where", async () => {
    for (let seed = 1; seed <= 20 * testDepth; seed += 1) {
      freshWorkshop();
      lines = await openChainLines(workshop);
      const groups = groupsOf(workshop.lineCount, seed);
      wire(groups);
      const decoded = decodeLines(lines);
      expect([seed, decoded.isAccepted, joinedGroups(decoded.model)]).toEqual([seed, true, byLeast(groups)]);
      lines.close();
    }
  });

  // 206 lines: 17 patterns, one or two to tell lookalikes apart and a last look, of 626 calls and at most one
  // write of the data pin a bit; the two undriven ones read 120 code contacts as well.
  it("costs the calls of 18 to 20 exchanges when 103 leads are in, and opens no file", () => {
    const pairs = randomGroups(workshop.lineCount, new Array<number>(103).fill(2), seeded(3));
    wire(pairs);
    control("clear-counts");
    expect(joinedGroups(decodeLines(lines).model)).toEqual(byLeast(pairs));
    const { reads, writes, opens, directionWrites } = report();
    expect(reads + writes).toBeGreaterThanOrEqual(18 * 626);
    expect(reads + writes).toBeLessThanOrEqual(20 * (626 + 208) + 2 * 120);
    expect({ opens, directionWrites }).toEqual({ opens: 1, directionWrites: 0 });
  });

  it("brings the codes of the plugs with it", () => {
    control("join 3 40", "code 0 1", "code 7 1", "code 119 1");
    const { codes } = decodeLines(lines);
    expect([...codes.keys()].filter((contact) => codes[contact] === 1)).toEqual([0, 7, 119]);
  });

  it.each([
    { fault: "stuck-low 60", line: 60, health: "stuck-low" },
    { fault: "dead-output 60", line: 60, health: "dead-output" },
    { fault: "dead-input 60", line: 60, health: "dead-input" },
    { fault: "stuck-high 199", line: 199, health: "no-answer" },
  ])(
    "with the fault `$fault` calls that line $health and decodes the other leads",
    ({ fault, line, health }) => {
      wire([
        [60, 61],
        [1, 150],
        [99, 100, 101],
      ]);
      control(fault);
      const { model, isAccepted } = decodeLines(lines);
      expect(isAccepted).toBe(true);
      expect(model.health[line]).toBe(health);
      expect(joinedGroups(model)).toEqual(
        expect.arrayContaining([
          [1, 150],
          [99, 100, 101],
        ]),
      );
    },
  );
});

describe("a wiring of the small board, from copper through pins, kernel and onoff", () => {
  it("decodes exactly, whatever is plugged where", async () => {
    for (let seed = 1; seed <= 40 * testDepth; seed += 1) {
      freshKernel();
      putDirect(smallPins);
      const lines = await openDirectLines({ pins: smallPins });
      const groups = groupsOf(smallPins.length, seed);
      wire(groups);
      const decoded = decodeLines(lines);
      expect([seed, decoded.isAccepted, joinedGroups(decoded.model)]).toEqual([seed, true, byLeast(groups)]);
      lines.close();
    }
  });
});
