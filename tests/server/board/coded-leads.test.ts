import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { leadSet } from "../../../hardware/build-guide/lead-set.ts";
import { codeForCable, leadsOfCable, leadsOfSpecs } from "../../../server/board/leads-of-cables.ts";
import { scenarioKit } from "../../../server/library.ts";
import { shippedBoard } from "../../hardware/scan/program-bench.ts";

const board = shippedBoard("workshop-coded");
const made = new Map(leadSet(board).map(({ code, quantity }) => [code?.code, quantity]));
const guide = readFileSync("hardware/build-guide/workshop-coded/parts-and-pins.md", "utf8");

const answers = readdirSync("scenarios").flatMap((file) => {
  const kit = scenarioKit(readFileSync(`scenarios/${file}`), file);
  if ("problems" in kit) throw new Error(`${file} cannot be read`);
  return kit.scenario.modelAnswers.map(({ cables }, index) => ({ name: `${file} ${index}`, cables }));
});

const countBy = (codes: readonly (number | undefined)[]): Map<number | undefined, number> => {
  const counts = new Map<number | undefined, number>();
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
};

describe("the leads of the coded workshop board", () => {
  it("are held to the answers of every task that ships", () => {
    expect(answers.length).toBeGreaterThanOrEqual(readdirSync("scenarios").length);
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
