import { describe, expect, it } from "vitest";
import { mismatches, readCases } from "../../../server/cases/wiring-case.ts";
import { jsonFilesIn } from "../../../server/files/read-file-with.ts";
import { rules } from "../../../shared/rules/index.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { ruleIds } from "../../../shared/rules/rule.ts";

const cases = readCases(jsonFilesIn("tests/shared/rules/cases"));

describe("the verdict on what every reader of the trade would try", () => {
  it.each(cases)("is right for $name, to the last finding", ({ wiring, expected, undetermined }) => {
    const stated = { expected, ...(undetermined ? { undetermined } : {}) };
    expect(mismatches(stated, judge(wiring))).toEqual([]);
  });

  it("has a case for every variant of every rule, and every rule has its place in the pack", () => {
    const shown = new Set(
      cases.flatMap(({ expected }) => expected.map(({ rule, variant }) => `${rule}/${variant}`)),
    );
    const all = rules.flatMap(({ id, variants }) =>
      Object.keys(variants).map((variant) => `${id}/${variant}`),
    );
    expect(all.filter((variant) => !shown.has(variant))).toEqual([]);
    expect(rules.map(({ id }) => id)).toEqual([...ruleIds]);
  });
});
