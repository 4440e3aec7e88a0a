import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Finding, Verdict } from "../../../shared/rules/verdict.ts";
import { answerMisses } from "../../../shared/scenario/answer-misses.ts";
import { type Scenario, scenarioSchema } from "../../../shared/scenario/scenario.schema.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";

const shipped = scenarioSchema.parse(JSON.parse(readFileSync("scenarios/first-spur.json", "utf8")));
const answer = (
  rule: "spur-cable" | "ring-open",
  notMet: number[] = [],
): Scenario["wrongAnswers"][number] => ({
  name: rule,
  built: { cables: [] },
  findings: [{ rule, variant: "small" }],
  notMet,
});
const scenario: Scenario = { ...shipped, wrongAnswers: [answer("spur-cable", [2])] };

const finding = (rule: Finding["rule"], variant: string, weight: Finding["weight"]): Finding => ({
  id: `${rule}/${variant}`,
  rule,
  variant,
  weight,
  causes: [],
  places: [],
  facts: {},
});
const verdict = (of: Partial<Verdict>, wiring: Wiring, notMet: number[] = []): Verdict => ({
  packVersion: "1",
  rulesRun: [],
  findings: [],
  suppressed: [],
  undetermined: [],
  figures: { cables: {}, points: {} },
  requirements: (wiring.wants ?? []).map((requirement, index) => ({
    requirement,
    answer: notMet.includes(index) ? "not-yet" : "met",
    places: [],
  })),
  proposal: notMet.length > 0 ? "not-yet" : "met",
  ...of,
});

/** A judge that is right about every answer: wired ones are met, the empty board gives what is stated. */
const rightJudge = (wiring: Wiring): Verdict =>
  wiring.cables.length > 0
    ? verdict({ findings: [finding("ring-device", "under", "note")] }, wiring)
    : verdict({ findings: [finding("spur-cable", "small", "fix")] }, wiring, [2]);

describe("checking the answers of a scenario", () => {
  it("finds nothing where every answer gets its verdict; a note is no finding to state", () => {
    expect(answerMisses(scenario, rightJudge)).toEqual([]);
  });

  it("judges each answer in six forms", () => {
    let count = 0;
    answerMisses(scenario, (wiring) => {
      count += 1;
      return rightJudge(wiring);
    });
    expect(count).toBe((scenario.modelAnswers.length + 1) * 6);
  });

  const missesOf = (judge: (wiring: Wiring) => Verdict, of: Scenario = scenario) =>
    answerMisses(of, judge).filter(({ form }) => form === "as written");

  it("misses a model answer that is not met, has a finding or cannot be told", () => {
    const lacking = [
      {
        rule: "spur-cable" as const,
        place: { kind: "cable" as const, id: "c" },
        field: "csaMm2",
        cause: "value" as const,
      },
    ];
    const judge = (wiring: Wiring): Verdict =>
      wiring.cables.length > 0
        ? verdict(
            { findings: [finding("rcd", "buried", "query")], undetermined: lacking, proposal: "not-yet" },
            wiring,
          )
        : rightJudge(wiring);
    const misses = missesOf(judge).filter(({ field }) => field === "modelAnswers[0]");
    expect(misses.map(({ expected, actual }) => [expected, actual])).toEqual([
      ["findings none", "rcd/buried"],
      ["nothing undetermined", "spur-cable lacks csaMm2 of c"],
      ["proposal met", "not-yet"],
    ]);
  });

  it.each<{ what: string; findings: Finding[]; actual: string }>([
    { what: "a finding that does not come", findings: [], actual: "none" },
    {
      what: "another variant",
      findings: [finding("spur-cable", "slim", "query")],
      actual: "spur-cable/slim",
    },
    {
      what: "a finding too many",
      findings: [finding("spur-cable", "small", "fix"), finding("spur-cable", "small", "fix")],
      actual: "spur-cable/small, spur-cable/small",
    },
  ])("misses a wrong answer for $what", ({ findings, actual }) => {
    const judge = (wiring: Wiring) =>
      wiring.cables.length > 0 ? rightJudge(wiring) : verdict({ findings }, wiring, [2]);
    expect(missesOf(judge)).toMatchObject([
      { field: "wrongAnswers[0] (spur-cable)", expected: "findings spur-cable/small", actual },
    ]);
  });

  it("misses a wrong answer for a requirement it should not meet and does, or the other way round", () => {
    const judge = (wiring: Wiring) =>
      wiring.cables.length > 0
        ? rightJudge(wiring)
        : verdict({ findings: [finding("spur-cable", "small", "fix")] }, wiring, [0]);
    expect(missesOf(judge)).toMatchObject([{ expected: "requirements not met: 2", actual: "0" }]);
  });

  it("takes any variant where none is stated, but leaves a stated one to whom it belongs", () => {
    const stated = {
      ...answer("spur-cable", [2]),
      findings: [{ rule: "spur-cable" as const }, { rule: "spur-cable" as const, variant: "slim" }],
    };
    const judge = (wiring: Wiring) =>
      wiring.cables.length > 0
        ? rightJudge(wiring)
        : verdict(
            { findings: [finding("spur-cable", "slim", "query"), finding("spur-cable", "small", "fix")] },
            wiring,
            [2],
          );
    expect(missesOf(judge, { ...scenario, wrongAnswers: [stated] })).toEqual([]);
  });

  it("misses a judge that goes by names or by the order of cables", () => {
    const byName = (wiring: Wiring) =>
      wiring.stations.some(({ id }) => id === "way-1")
        ? rightJudge(wiring)
        : verdict({ proposal: "not-yet" }, wiring);
    const forms = new Set(answerMisses(scenario, byName).map(({ form }) => form));
    expect([...forms].toSorted()).toEqual(["renamed and walked the other way", "with stations renamed"]);
    const byOrder = (wiring: Wiring) =>
      wiring.cables.length === 0 || wiring.cables[0]?.from === "way-1.a"
        ? rightJudge(wiring)
        : verdict({ proposal: "not-yet" }, wiring);
    expect(new Set(answerMisses(scenario, byOrder).map(({ form }) => form))).toContain(
      "walked the other way",
    );
  });
});
