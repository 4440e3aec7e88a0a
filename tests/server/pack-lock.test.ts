import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { lockedCases } from "../../server/pack/locked-cases.ts";
import { changedVerdicts, packLockOf, packLockProblem, readPackLock } from "../../server/pack/pack-lock.ts";
import { rules } from "../../shared/rules/index.ts";
import { judge } from "../../shared/rules/judge.ts";
import { packVersion } from "../../shared/rules/pack-version.ts";
import { rulePackText } from "../../shared/rules/rule-pack-text.ts";
import { TestBench } from "./test-bench.ts";

const cases = lockedCases();
const now = packLockOf(packVersion, cases, judge);

describe("the lock of the rule pack", () => {
  it("is of this version and of the verdicts it gives", () => {
    expect(packLockProblem(readPackLock(), now)).toBeUndefined();
  });

  it("holds every case", () => {
    expect(cases.length).toBeGreaterThan(180);
    expect(Object.keys(now.cases)).toHaveLength(cases.length);
  });

  // A rule that falls silent is a change of the pack, though its version says nothing of it.
  it("is broken by a rule that falls silent, and the remedy is named", () => {
    const without = packLockOf(packVersion, cases, (wiring) =>
      judge(
        wiring,
        rules.filter(({ id }) => id !== "ring-open"),
      ),
    );
    expect(packLockProblem(now, without)).toContain("Raise packVersion in shared/rules/pack-version.ts");
    const quiet = rules.map((rule) => (rule.id === "ring-open" ? { ...rule, check: () => [] } : rule));
    const silent = packLockOf(packVersion, cases, (wiring) => judge(wiring, quiet));
    expect(changedVerdicts(now, silent).length).toBeGreaterThan(0);
    expect(changedVerdicts(now, silent).length).toBeLessThan(cases.length / 2);
  });

  it("is broken by another version alone", () => {
    expect(packLockProblem({ ...now, packVersion: "uk-0" }, now)).toContain("npm run pack-lock");
  });

  it("is out of date with a case more, and no version has to be raised for it", () => {
    const fewer = packLockOf(packVersion, cases.slice(1), judge);
    expect(changedVerdicts(fewer, now)).toEqual([]);
    expect(packLockProblem(fewer, now)).toContain("added");
  });
});

describe("the rule pack as a document", () => {
  it("is the same text each time and names every rule, its weights and its tables", () => {
    expect(rulePackText()).toBe(rulePackText());
    const pack = JSON.parse(rulePackText()) as {
      packVersion: string;
      rules: { id: string; sentences?: object }[];
      values: object[];
    };
    expect(pack.packVersion).toBe(packVersion);
    expect(pack.rules.map(({ id }) => id).sort()).toEqual(rules.map(({ id }) => id).sort());
    expect(pack.rules.filter(({ sentences }) => !sentences)).toEqual([]);
    expect(pack.values.length).toBeGreaterThan(300);
  });

  it("is kept in the log by its hash from each start of the bench on", async () => {
    const { parts } = await new TestBench().start();
    const boot = parts.records!.logReader.document(createHash("sha256").update(rulePackText()).digest("hex"));
    expect(Buffer.from(boot!).toString("utf8")).toBe(rulePackText());
  });
});
