import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { methodsOf } from "../../../kiosk/steps/methods-of.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";

const planOf = (id: string) => {
  const file = `scenarios/${id}.json`;
  const read = readScenario(readFileSync(file, "utf8"), file);
  if (!read.ok) throw new Error(`${file} cannot be read`);
  return read.value.plan;
};

describe("the ways of running a cable that the worksheet's table shows", () => {
  it.each([
    { task: "first-spur", methods: ["C"] },
    { task: "loft-insulation", methods: ["C", "101"] },
    { task: "branching-radial", methods: ["C", "100"] },
  ])("are those of the house of $task: $methods", ({ task, methods }) => {
    expect(methodsOf(planOf(task))).toEqual(methods);
  });

  it("count one that only an exception names, and leave out one that no wall names", () => {
    const plan = planOf("first-spur");
    const [a, b] = plan.places;
    if (!a || !b) throw new Error("a plan has places");
    const overrides = [{ a: a.station, b: b.station, method: "103" as const }];
    const routeClasses = { ...plan.routeClasses, unused: { method: "A" as const } };
    expect(methodsOf({ ...plan, routeClasses, overrides })).toEqual(["C", "103"]);
  });
});
