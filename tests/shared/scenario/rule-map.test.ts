import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { BoardDescription } from "../../../shared/board/board.schema.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { type RuleId, ruleIds } from "../../../shared/rules/rule.ts";
import { ruleMap, rulesTaught } from "../../../shared/scenario/rules-taught.ts";
import { fitsBoard } from "../../../shared/scenario/fits-board.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";

const fileOf = <T>(name: string): T => JSON.parse(readFileSync(name, "utf8")) as T;
const scenarios = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => fileOf<Scenario>(`scenarios/${name}`));
const boards = ["workshop", "lighting"].map((id) => fileOf<BoardDescription>(`hardware/boards/${id}.json`));
const map = ruleMap(scenarios);

/** Rules that no wrong answer can break, each shown below or by the tests of what it is about. */
const taughtOtherwise: Partial<Record<RuleId, string>> = {
  "outside-task":
    "it notes a cable to a station that an answer cannot name: any task on a larger board teaches it",
};

describe("the map of the rules", () => {
  it.each(ruleIds.filter((rule) => !taughtOtherwise[rule]))("has a task that teaches %s", (rule) => {
    expect(map.get(rule)).not.toEqual([]);
  });

  it("goes by what a wrong answer breaks, whatever rule it stands under", () => {
    const [one] = scenarios;
    expect(rulesTaught({ wrongAnswers: [] })).toEqual([]);
    expect(
      rulesTaught({
        wrongAnswers: [{ ...one!.wrongAnswers[0]!, findings: [{ rule: "rcd" }, { rule: "short" }] }],
      }),
    ).toEqual(["short", "rcd"]);
  });

  it.each(scenarios.map(({ id }) => id))(
    "has something to teach in %s, or a thing its task asks for",
    (id) => {
      const scenario = scenarios.find((one) => one.id === id)!;
      expect(rulesTaught(scenario).length + scenario.requirements.length).toBeGreaterThan(1);
      expect(rulesTaught(scenario)).not.toEqual([]);
    },
  );
});

describe("a rule that no wrong answer can break", () => {
  it.each(scenarios.map((scenario) => ({ id: scenario.id, scenario })))(
    "notes a cable to a station outside the task: $id",
    ({ scenario }) => {
      const used = new Set<string>(scenario.stations.map(({ id }) => id));
      const board = boards.find((each) => fitsBoard(scenario, each))!;
      const [one, two] = board.stations.filter(
        ({ id, kind }) => kind !== "way" && kind !== "plate-switch" && !used.has(id),
      );
      const [answer] = scenario.modelAnswers;
      const stray = {
        from: `${one!.id}.a`,
        to: `${two!.id}.a`,
        csaMm2: 2.5,
      } as Built["cables"][number];
      const built = { ...answer!, cables: [...answer!.cables, stray] };
      const { findings } = judge(toWiring({ scenario, board, built }));
      expect(findings.map(({ rule }) => rule)).toContain("outside-task");
      expect(judge(toWiring({ scenario, board, built: answer! })).findings).toEqual([]);
    },
  );
});
