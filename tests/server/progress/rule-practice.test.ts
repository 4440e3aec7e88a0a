import { describe, expect, it } from "vitest";
import type { RuleId } from "../../../shared/rules/rule.ts";
import { dueRules, type Go, rulePractice, taskFor } from "../../../server/progress/rule-practice.ts";

const dayMs = 86_400_000;
const taught = (): RuleId[] => ["polarity", "spur-count"];
const go = (day: number, tripped: RuleId[] = [], outcome: Go["outcome"] = "met", scenario = "a"): Go => ({
  ...{ scenario, endedWallMs: day * dayMs, outcome, tripped },
});
const polarity = (...goes: Go[]) => rulePractice(goes, taught).find(({ rule }) => rule === "polarity")!;

describe("practice of a rule", () => {
  it.each([
    [1, 1],
    [2, 3],
    [3, 7],
    [4, 14],
    [5, 30],
    [8, 30],
  ])("kept %i times in a row wants practice again after %i days", (count, days) => {
    const goes = Array.from({ length: count }, () => go(100));
    expect(polarity(...goes)).toMatchObject({ keptCount: count, isTripping: false });
    expect(polarity(...goes).dueWallMs).toBe((100 + days) * dayMs);
  });

  it("begins anew where it is tripped over, and wants practice at once", () => {
    const stand = polarity(go(1), go(2), go(9, ["polarity"], "not-yet"));
    expect(stand).toMatchObject({ trippedCount: 1, keptCount: 2, isTripping: true, dueWallMs: 9 * dayMs });
    expect(polarity(go(1), go(2), go(9, ["polarity"]), go(9)).dueWallMs).toBe(10 * dayMs);
  });

  it("is not kept by a go that was left, nor by one whose task does not teach it", () => {
    expect(rulePractice([go(1, [], "left")], taught)).toEqual([]);
    expect(rulePractice([go(1)], () => ["rcd"]).map(({ rule }) => rule)).toEqual(["rcd"]);
  });

  it("is tripped over in a go that was left too", () => {
    expect(polarity(go(1, ["polarity"], "left")).isTripping).toBe(true);
  });
});

describe("what to practise next", () => {
  it("is what was tripped over, most often first, then what is longest overdue; not what is not due", () => {
    const goes = [
      go(0, [], "met", "old"),
      go(5, ["short"], "not-yet", "x"),
      go(5, ["polarity", "short"], "not-yet", "x"),
      go(6, [], "met", "new"),
    ];
    const rules: Record<string, RuleId[]> = { old: ["rcd"], new: ["volt-drop"], x: [] };
    const practice = rulePractice(goes, (scenario) => rules[scenario] ?? []);
    const due = (day: number) => dueRules(practice, day * dayMs).map(({ rule }) => rule);
    expect(due(6.5)).toEqual(["short", "polarity", "rcd"]);
    expect(due(7)).toEqual(["short", "polarity", "rcd", "volt-drop"]);
  });

  it("is a task that teaches it and was not done yet, or longest ago, the easiest of those", () => {
    const tasks = [
      { id: "hard", level: 4, rules: ["polarity"] as RuleId[] },
      { id: "easy", level: 1, rules: ["polarity"] as RuleId[] },
      { id: "other", level: 1, rules: ["rcd"] as RuleId[] },
    ];
    expect(taskFor("polarity", tasks, [])).toBe("easy");
    expect(taskFor("polarity", tasks, [go(1, [], "met", "easy")])).toBe("hard");
    expect(taskFor("polarity", tasks, [go(1, [], "met", "easy"), go(2, [], "met", "hard")])).toBe("easy");
    expect(taskFor("short", tasks, [])).toBeUndefined();
  });
});
