import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cableTable } from "../../../server/view/cable-table.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";

const taskOf = (id: string) => {
  const file = `scenarios/${id}.json`;
  const read = readScenario(readFileSync(file, "utf8"), file);
  if (!read.ok) throw new Error(`${file} cannot be read`);
  return read.value;
};

describe("the table of what cables may carry beside the worksheet", () => {
  it.each([
    { task: "first-spur", methods: ["C"] },
    { task: "loft-insulation", methods: ["C", "101"] },
    { task: "branching-radial", methods: ["C", "100"] },
  ])("has the ways cables run in the house of $task: $methods", ({ task, methods }) => {
    expect(cableTable(taskOf(task)).methods).toEqual(methods);
  });

  it("counts a way that only an exception names, and leaves out one that no wall names", () => {
    const { plan, parts } = taskOf("first-spur");
    const [a, b] = plan.places;
    if (!a || !b) throw new Error("a plan has places");
    const overrides = [{ a: a.station, b: b.station, method: "103" as const }];
    const routeClasses = { ...plan.routeClasses, unused: { method: "A" as const } };
    const { methods } = cableTable({ plan: { ...plan, routeClasses, overrides }, parts });
    expect(methods).toEqual(["C", "103"]);
  });

  // BS 7671:2018 Table 4D5: method C 16, 20 and 27 A; method 101 10.5, 13 and 17 A.
  it("has a row a size, the smallest first, with a figure a way", () => {
    const { plan } = taskOf("loft-insulation");
    const { rows } = cableTable({ plan, parts: { cableCsaMm2: [2.5, 1, 1.5] } });
    expect(rows).toEqual([
      { csaMm2: 1, capacityA: [16, 10.5] },
      { csaMm2: 1.5, capacityA: [20, 13] },
      { csaMm2: 2.5, capacityA: [27, 17] },
    ]);
  });

  it("leaves the figure of a size that is not in it open", () => {
    const { plan } = taskOf("first-spur");
    expect(cableTable({ plan, parts: { cableCsaMm2: [3] } }).rows).toEqual([
      { csaMm2: 3, capacityA: [null] },
    ]);
  });
});
