import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { testMissing } from "../../../shared/rules/test-missing.ts";
import type { TestKind } from "../../../shared/wiring/wiring.schema.ts";
import { factsOf, said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const way = stationId("way-1");
const radial = (wanted: TestKind[], done: TestKind[], other: TestKind[] = []) =>
  wire(["way-1.a socket-1.a"], {
    wants: [{ kind: "readings", way, tests: wanted }],
    readings: [
      ...done.map((test) => ({ test, way })),
      ...other.map((test) => ({ test, way: stationId("way-2") })),
    ],
  });

describe("tests that a task asks for", () => {
  it("are complete once each is on record, whatever was read", () => {
    expect(
      said(testMissing, radial(["continuity-cpc", "insulation"], ["insulation", "continuity-cpc"])),
    ).toEqual([]);
  });

  it("that are not on record are named in their order", () => {
    const wiring = radial(["polarity", "insulation", "continuity-cpc"], ["insulation"]);
    expect(said(testMissing, wiring)).toEqual(["fix missing way-1"]);
    expect(factsOf(testMissing, wiring)).toEqual({ way, tests: ["continuity-cpc", "polarity"] });
  });

  it("of one way are not done by those of another", () => {
    expect(said(testMissing, radial(["insulation"], [], ["insulation"]))).toEqual(["fix missing way-1"]);
  });

  it("are none where the task asks for none", () => {
    expect(said(testMissing, wire(["way-1.a socket-1.a"]))).toEqual([]);
  });
});
