import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { leadSet } from "../../../hardware/build-guide/lead-set.ts";
import { codeForCable, leadsOfCable, leadsOfSpecs } from "../../../server/board/leads-of-cables.ts";
import { scenarioKit } from "../../../server/library.ts";
import { lacking } from "../../../shared/scenario/fits-board.ts";
import { shippedBoard } from "../../hardware/scan/program-bench.ts";

const board = shippedBoard("workshop-coded");
const made = new Map(leadSet(board).map(({ code, quantity }) => [code?.code, quantity]));
const guide = readFileSync("hardware/build-guide/workshop-coded/parts-and-pins.md", "utf8");

const kits = readdirSync("scenarios").map((file) => {
  const kit = scenarioKit(readFileSync(`scenarios/${file}`), file);
  if ("problems" in kit) throw new Error(`${file} cannot be read`);
  return { file, kit };
});
/** Those that can be wired on this board; the others are for another one. */
const offered = kits.filter(({ kit }) => lacking(kit.stripped, board).length === 0);

const answers = offered.flatMap(({ file, kit }) =>
  kit.scenario.modelAnswers.map(({ cables }, index) => ({ name: `${file} ${index}`, cables })),
);

const countBy = (codes: readonly (number | undefined)[]): Map<number | undefined, number> => {
  const counts = new Map<number | undefined, number>();
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
};

describe("the leads of the coded workshop board", () => {
  it("are held to the answers of every task that ships for it: all but those of the lighting board", () => {
    expect(answers.length).toBeGreaterThanOrEqual(offered.length);
    const lighting = shippedBoard("lighting");
    const others = kits.filter((one) => !offered.includes(one));
    expect(offered.length).toBeGreaterThan(25);
    for (const { file, kit } of others) expect([file, lacking(kit.stripped, lighting)]).toEqual([file, []]);
  });

  it.each(answers)("are enough, in size and cores, for $name", ({ cables }) => {
    const codes = cables.map(({ from, to, csaMm2 }) => codeForCable(board, from, to, csaMm2));
    cables.forEach((cable, index) => {
      expect(leadsOfCable(board, cable.from, cable.to, codes[index]).sort()).toEqual(
        leadsOfSpecs(board, [cable]).sort(),
      );
    });
    for (const [code, count] of countBy(codes)) {
      expect(code, "a size that no code tells").toBeDefined();
      expect(made.get(code)).toBeGreaterThanOrEqual(count);
    }
  });

  it("stand in the guide, each kind with its number", () => {
    for (const { code, quantity } of leadSet(board))
      expect(guide).toMatch(
        new RegExp(`\\| ${quantity} \\| ${code?.csaMm2} mm² \\| [^|]+ \\| code ${code?.code}: `),
      );
  });
});
