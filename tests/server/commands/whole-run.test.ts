import { describe, expect, it } from "vitest";
import { isWholeRun } from "../../../server/commands/whole-run.ts";
import { partOf } from "../../part-of.ts";

describe("a run of the checks", () => {
  it.each([
    { env: {}, isWhole: false },
    { env: { TEST_DEPTH: "1" }, isWhole: false },
    { env: { CI: "true" }, isWhole: true },
    { env: { TEST_DEPTH: "10" }, isWhole: true },
    { env: { TEST_WHOLE: "yes" }, isWhole: true },
    { env: { CI: "true", TEST_WHOLE: "no" }, isWhole: false },
  ])("is whole or not: $env", ({ env, isWhole }) => {
    expect(isWholeRun(env)).toBe(isWhole);
  });

  it("tries each case once, whatever its seed, where sweeps share them", () => {
    const cases = [..."abcdefghij"];
    for (let seed = 0; seed < 5; seed += 1) {
      const parts = [0, 1, 2].map((more) => partOf({ isWhole: false, seed }, cases, 3, more));
      expect(parts.flat().sort()).toEqual(cases);
    }
    expect(partOf({ isWhole: true, seed: 1 }, cases, 3)).toEqual(cases);
  });
});
