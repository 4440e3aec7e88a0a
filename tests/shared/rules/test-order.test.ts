import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { testOrder } from "../../../shared/rules/test-order.ts";
import type { TestKind } from "../../../shared/wiring/wiring.schema.ts";
import { factsOf, said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const ring: TestKind[] = ["ring-step-1", "ring-step-2", "ring-step-3"];
const done = (tests: TestKind[], ways = tests.map(() => "way-1")) =>
  wire(["way-1.a socket-1.a"], {
    readings: tests.map((test, index) => ({ test, way: stationId(ways[index]!) })),
  });

// BS 7671 643.1 (612.1 of the 2008 edition, a secondary copy): continuity of protective conductors, ring continuity, insulation resistance, polarity.
describe("dead tests", () => {
  it.each<[string, TestKind[]]>([
    ["of a radial", ["continuity-cpc", "insulation", "polarity"]],
    ["of a ring", [...ring, "insulation", "polarity"]],
    ["repeated after a repair", ["continuity-cpc", "insulation", "continuity-cpc", "insulation", "polarity"]],
    [
      "several readings of one step",
      ["ring-step-1", "ring-step-1", "ring-step-1", "ring-step-2", "insulation"],
    ],
    ["of a ring, its protective conductor read once more", [...ring, "continuity-cpc", "insulation"]],
    ["none at all", []],
  ])("%s in their order are sound", (_, tests) => {
    expect(said(testOrder, done(tests))).toEqual([]);
  });

  it.each<[TestKind, TestKind[]]>([
    ["insulation", ["insulation", "continuity-cpc"]],
    ["polarity", ["continuity-cpc", "polarity", "insulation"]],
    ["ring-step-3", ["ring-step-1", "ring-step-3", "ring-step-2"]],
    ["insulation", ["ring-step-1", "insulation", "ring-step-2", "ring-step-3"]],
  ])("with %s too early are out of order", (test, tests) => {
    expect(said(testOrder, done(tests))).toEqual(["fix order way-1"]);
    expect(factsOf(testOrder, done(tests))["test"]).toBe(test);
  });

  it("of one way do not wait for those of another", () => {
    expect(said(testOrder, done(["insulation", "continuity-cpc"], ["way-1", "way-2"]))).toEqual([]);
  });

  it("that were never done are not out of order", () => {
    expect(said(testOrder, done(["insulation"]))).toEqual([]);
  });
});
