import { describe, expect, it } from "vitest";
import { readCases, type WiringCase } from "../../../server/cases/wiring-case.ts";
import { withoutEachField } from "../../../server/cases/without-each-field.ts";
import { mutantsOf, silentLosses, survivors } from "../../../server/commands/mutants.ts";
import { jsonFilesIn } from "../../../server/files/read-file-with.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { rules } from "../../../shared/rules/index.ts";
import { wire } from "../../shared/rules/wire.ts";

const cases = readCases(jsonFilesIn("tests/shared/rules/cases"));

describe("the cases on file", () => {
  it("notice every rule and variant that never fires, and every variant that always does", () => {
    const mutants = mutantsOf(rules);
    expect(mutants.length).toBeGreaterThan(200);
    expect(survivors(mutants, cases)).toEqual([]);
  });

  it("lose no finding without a word when an optional field is not said", () => {
    expect(cases.flatMap((one) => silentLosses(one))).toEqual([]);
  });
});

describe("what looks for checks that cannot fail", () => {
  it("finds a rule that no case is about", () => {
    const about = cases.filter(({ expected }) => !expected.some(({ rule }) => rule === "two-rings"));
    expect(survivors(mutantsOf(rules), about)).toContain("two-rings never fires");
  });

  it("finds a finding that goes without a word", () => {
    const wiring = wire(["way-1.a socket-1.a", "socket-1.b socket-2.a"], {
      settings: { "way-1": { deviceRatingA: 20 } },
      taskStations: [stationId("way-1"), stationId("socket-1")],
    });
    const one: WiringCase = { name: "a cable outside the task", wiring, expected: [] };
    expect(silentLosses(one)).toEqual([]);
    expect(silentLosses(one, () => false)).toEqual([
      "a cable outside the task: without taskStations nothing is said of outside-task/outside-task/socket-1.b~socket-2.a",
    ]);
  });

  it("takes every optional field away once, and leaves the rest as it was", () => {
    const wiring = wire(["way-1.a socket-1.a"], { settings: { "way-1": { rcdMa: 30 } } });
    const before = structuredClone(wiring);
    expect(withoutEachField(wiring).map(({ path }) => path)).toEqual([
      "stations[0].settings.gangs",
      "stations[1].settings.deviceStandard",
      "stations[1].settings.deviceCurve",
      "stations[1].settings.deviceRatingA",
      "stations[1].settings.rcdMa",
      "cables[0].csaMm2",
      "cables[0].lengthM",
    ]);
    expect(wiring).toEqual(before);
  });
});
