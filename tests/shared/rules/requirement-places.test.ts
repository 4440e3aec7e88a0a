import { describe, expect, it } from "vitest";
import { cableId, entryId, stationId } from "../../../shared/board/ids.ts";
import { at } from "../../../shared/rules/evidence.ts";
import { requirementPlaces } from "../../../shared/rules/requirement-places.ts";
import type { RequirementResult } from "../../../shared/rules/verdict.ts";

const way = stationId("way-1");
const fcu = stationId("fcu-1");
const [one, two] = [stationId("socket-1"), stationId("socket-2")];
const kept = cableId(entryId("way-1", "a"), entryId("socket-1", "a"));
const result = (
  requirement: RequirementResult["requirement"],
  answer: RequirementResult["answer"] = "met",
  places: RequirementResult["places"] = [],
): RequirementResult => ({ requirement, answer, places });

describe("where a requirement is looked for", () => {
  it.each([
    { requirement: { kind: "served", stations: [one, two] }, ids: [one, two] },
    { requirement: { kind: "one-circuit", stations: [one, two], way }, ids: [one, two] },
    { requirement: { kind: "shape", of: way, shape: "ring" }, ids: [way] },
    { requirement: { kind: "in-ring", stations: [one] }, ids: [one] },
    { requirement: { kind: "unfused-spur", stations: [one] }, ids: [one] },
    { requirement: { kind: "through-fcu", stations: [one, two], fcu }, ids: [one, two] },
    { requirement: { kind: "own-switch", stations: [one, two], by: fcu }, ids: [one, two] },
    { requirement: { kind: "fuse", stations: [two], mostA: 3 }, ids: [two] },
    { requirement: { kind: "sized", way }, ids: [way] },
    { requirement: { kind: "thrift", csaMm2: [2.5, 4] }, ids: [] },
    { requirement: { kind: "kept", cables: [kept] }, ids: [kept] },
    { requirement: { kind: "device", way, ratingA: [32] }, ids: [way] },
    { requirement: { kind: "readings", way, tests: ["polarity"] }, ids: [way] },
  ] as const)("is all that it is about where it is met or cannot be told: $requirement.kind", (row) => {
    const requirement = row.requirement as unknown as RequirementResult["requirement"];
    for (const answer of ["met", "cannot-say"] as const)
      expect(requirementPlaces(result(requirement, answer)).map(({ id }) => id)).toEqual(row.ids);
  });

  it("is where it is not met, where it is not", () => {
    const served = { kind: "served" as const, stations: [one, two] };
    expect(requirementPlaces(result(served, "not-yet", [at("station", two)]))).toEqual([at("station", two)]);
  });

  it("is never told of hidden faults that are to be found", () => {
    const hunt = { kind: "fault-named" as const, faults: ["open-earth-at-2"] };
    expect(requirementPlaces(result(hunt, "not-yet", [at("station", "open-earth-at-2")]))).toEqual([]);
  });
});
