import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judge } from "../../../shared/rules/judge.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";

const stored = (name: string) => {
  const file = new URL(`stored/${name}.json`, import.meta.url);
  const read = readScenario(readFileSync(file, "utf8"), name);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

// Documents as logs hold them: a changed format keeps reading them for ever.
describe.each(["sun-room-revision-1", "kitchen-radial-revision-1"])("%s, as an old log holds it", (name) => {
  it("is read without a list of what its text asks", () => {
    expect(stored(name)).toMatchObject({ revision: 1 });
    expect(stored(name).asks).toBeUndefined();
  });

  it("judges an old attempt by the requirements of its day", () => {
    const scenario = stored(name);
    const [built] = scenario.modelAnswers;
    if (!built) throw new Error("no answer");
    const { requirements, proposal } = judge(toWiring({ scenario, built }));
    expect(requirements.map(({ requirement }) => requirement)).toEqual(scenario.requirements);
    expect(proposal).toBe("met");
  });
});
