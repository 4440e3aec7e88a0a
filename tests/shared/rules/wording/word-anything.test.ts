import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge } from "../../../../shared/rules/judge.ts";
import { wordFinding } from "../../../../shared/rules/wording/word-finding.ts";
import { wordUndetermined } from "../../../../shared/rules/wording/word-undetermined.ts";
import { testDepth } from "../../../depth.ts";
import { anyStatedWiring, anyWiring } from "../any-wiring.ts";

describe("whatever a verdict says of anything that can be plugged", () => {
  it.each(["en", "pl"] as const)("is whole sentences in %s", (language) => {
    fc.assert(
      fc.property(fc.oneof(anyWiring, anyStatedWiring), (wiring) => {
        const { findings, suppressed, undetermined } = judge(wiring);
        const sentences: string[] = [
          ...[...findings, ...suppressed].flatMap((one) =>
            Object.values<string>({ ...wordFinding(one, wiring, language) }),
          ),
          ...undetermined.map((one) => wordUndetermined(one, wiring, language)),
        ];
        expect(sentences.filter((text) => /[{}[\]]|undefined|NaN|^\s*$/.test(text))).toEqual([]);
      }),
      { numRuns: 200 * testDepth },
    );
  });
});
