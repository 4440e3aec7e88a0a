import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DebriefView } from "../../../shared/protocol/keep-view.ts";
import { type RuleId, ruleIds } from "../../../shared/rules/rule.ts";
import { debriefOf, shareOf } from "../../../server/keep/debrief.ts";
import { handIn } from "../desk/assessed-work.ts";
import { testServer } from "../test-server.ts";

const [first, second] = ruleIds as readonly RuleId[] as [RuleId, RuleId];

const classOf = (...rules: RuleId[][]): Map<string, Set<RuleId>> =>
  new Map(rules.map((some, index) => [`learner ${index}`, new Set(some)]));

describe("the debrief of a class", () => {
  it("says nothing of fewer than five learners, however many tripped", () => {
    const four = classOf([first], [first], [first], [first]);
    expect(debriefOf(four, "en")).toEqual({ isTooFew: true, lines: [] });
    expect(debriefOf(four.set("another", new Set([first])), "en").lines).toHaveLength(1);
  });

  it("has no line that fewer than three learners are behind", () => {
    const found = debriefOf(classOf([first, second], [first, second], [first], [], [], []), "en");
    expect(found.lines.map(({ rule }) => rule)).toEqual([first]);
  });

  it("never tells more than a share in words, has no name or figure in it, and at most six lines", () => {
    const tripped = fc.array(fc.uniqueArray(fc.constantFrom(...ruleIds)), { maxLength: 30 });
    fc.assert(
      fc.property(tripped, (rules) => {
        const found = debriefOf(classOf(...rules), "pl");
        expect(found.lines.length).toBeLessThanOrEqual(6);
        for (const { rule } of found.lines)
          expect(rules.filter((some) => some.some((one) => one === rule)).length).toBeGreaterThanOrEqual(3);
        expect(JSON.stringify(found)).not.toContain("learner");
        for (const line of found.lines)
          expect(Object.values(line).every((part) => typeof part === "string")).toBe(true);
      }),
    );
  });

  it.each([
    [3, 10, "some"],
    [4, 10, "half"],
    [6, 10, "half"],
    [7, 10, "most"],
    [5, 5, "most"],
  ])("calls %i of %i %s", (count, size, share) => {
    expect(shareOf(count, size)).toBe(share);
  });

  it("is for a trainer and an assessor, and has nothing of assessed work that is not released", async () => {
    const { bench, url } = await testServer();
    await handIn(bench);
    await bench.does("sign-out", {});
    const status = async () => (await fetch(`${url}/keep-data/debrief`)).status;
    expect(await status()).toBe(401);
    for (const [role, expected] of [
      ["VERIFIER", 403],
      ["TECHNICIAN", 403],
      ["ASSESSOR", 200],
      ["TRAINER", 200],
    ] as const) {
      await bench.does("sign-in", { by: "badge", badge: `SPURWISE-DEMO-${role}` });
      expect(await status(), role).toBe(expected);
    }
    const found = (await (await fetch(`${url}/keep-data/debrief`)).json()) as DebriefView;
    expect(found).toEqual({ isTooFew: true, lines: [] });
  });
});
