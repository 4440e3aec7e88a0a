import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cableId, entryId, stationId } from "../../../shared/board/ids.ts";
import { resolveSettings, type Setting, settingAuthors } from "../../../shared/wiring/settings.ts";
import { testDepth } from "../../depth.ts";

const cable = cableId(entryId("socket-1", "a"), entryId("socket-2", "a"));
const way = stationId("way-1");
const size = (value: number, by: Setting["by"]): Setting => ({ subject: cable, key: "csaMm2", value, by });

describe("which of several settings counts", () => {
  it.each([
    { said: [size(2.5, "sensed"), size(1.5, "learner")], counts: { value: 2.5, by: "sensed" } },
    { said: [size(2.5, "sensed"), size(1.5, "trainer")], counts: { value: 2.5, by: "sensed" } },
    { said: [size(2.5, "scenario"), size(1.5, "learner")], counts: { value: 1.5, by: "learner" } },
    { said: [size(1.5, "learner"), size(2.5, "scenario")], counts: { value: 1.5, by: "learner" } },
    { said: [size(2.5, "scenario"), size(1.5, "sensed")], counts: { value: 1.5, by: "sensed" } },
    { said: [size(1.5, "learner"), size(2.5, "learner")], counts: { value: 2.5, by: "learner" } },
    { said: [size(1.5, "learner"), size(2.5, "trainer")], counts: { value: 2.5, by: "trainer" } },
    { said: [size(1.5, "trainer"), size(2.5, "learner")], counts: { value: 2.5, by: "learner" } },
    {
      said: [size(1, "learner"), size(4, "trainer"), size(6, "learner")],
      counts: { value: 6, by: "learner" },
    },
  ])("is $counts.value mm² by the $counts.by for $said", ({ said, counts }) => {
    expect(resolveSettings(said).values.get(cable)?.get("csaMm2")).toEqual(counts);
  });

  it("is told apart by subject and key", () => {
    const { values, clashes } = resolveSettings([
      size(2.5, "learner"),
      { subject: way, key: "deviceRatingA", value: 32, by: "learner" },
      { subject: way, key: "deviceCurve", value: "B", by: "scenario" },
    ]);
    expect(values.get(way)).toEqual(
      new Map([
        ["deviceRatingA", { value: 32, by: "learner" }],
        ["deviceCurve", { value: "B", by: "scenario" }],
      ]),
    );
    expect(values.get(cable)?.size).toBe(1);
    expect(clashes).toEqual([]);
  });
});

describe("a clash", () => {
  it("is shown where a code says another size than the learner", () => {
    expect(resolveSettings([size(1.5, "learner"), size(2.5, "sensed")]).clashes).toEqual([
      {
        subject: cable,
        key: "csaMm2",
        used: { value: 2.5, by: "sensed" },
        unused: [{ value: 1.5, by: "learner" }],
      },
    ]);
  });

  it("is none where all say the same, or where one person changes their mind", () => {
    expect(resolveSettings([size(2.5, "learner"), size(2.5, "sensed")]).clashes).toEqual([]);
    expect(resolveSettings([size(1.5, "learner"), size(2.5, "learner")]).clashes).toEqual([]);
    expect(
      resolveSettings([size(1.5, "learner"), size(2.5, "learner"), size(2.5, "sensed")]).clashes,
    ).toEqual([]);
  });

  it("is there exactly where two authors said different things last", () => {
    const setting = fc.record({
      subject: fc.constantFrom(cable, way),
      key: fc.constantFrom<Setting["key"]>("csaMm2", "ratingA"),
      value: fc.constantFrom(1.5, 2.5),
      by: fc.constantFrom(...settingAuthors),
    });
    fc.assert(
      fc.property(fc.array(setting, { maxLength: 12 }), (said) => {
        const { values, clashes } = resolveSettings(said);
        for (const subject of [cable, way])
          for (const key of ["csaMm2", "ratingA"] as const) {
            const about = said.filter((one) => one.subject === subject && one.key === key);
            const lasts = settingAuthors.flatMap((by) => about.findLast((one) => one.by === by) ?? []);
            const isClash = new Set(lasts.map(({ value }) => value)).size > 1;
            expect(clashes.some((clash) => clash.subject === subject && clash.key === key)).toBe(isClash);
            expect(values.get(subject)?.has(key) ?? false).toBe(about.length > 0);
          }
      }),
      { numRuns: 300 * testDepth },
    );
  });
});
