import { describe, expect, it } from "vitest";
import { judge } from "../../shared/rules/judge.ts";
import { wire } from "../shared/rules/wire.ts";
import { handJudged } from "./hand-judged.ts";

describe("what was judged by hand from the clause before the rules were asked", () => {
  it.each(handJudged)("$title: $why", ({ lines, extras, gives }) => {
    const { findings, undetermined } = judge(wire(lines, extras));
    const said = findings.map(({ weight, rule, causes, places }) => {
      const known = [...causes, ...places].map(({ id }) => `${weight} ${rule} ${id}`);
      return gives.find((line) => known.includes(line)) ?? known[0];
    });
    expect(said.toSorted()).toEqual([...gives].toSorted());
    expect(undetermined).toEqual([]);
  });
});
