import { describe, expect, it } from "vitest";
import { hiddenFaultSchema } from "../../../shared/wiring/hidden-fault.schema.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";

/** A wiring file with one quantity of each kind, `changed` laid over the part that it is in. */
const file = (part: string, changed: Record<string, unknown>): unknown => {
  const of = (name: string) => (name === part ? changed : {});
  return {
    version: 1,
    supply: of("supply"),
    stations: [
      { id: "way-1", kind: "way", settings: of("way") },
      { id: "fcu-1", kind: "fcu", settings: of("fcu") },
      { id: "isolator-1", kind: "isolator", settings: of("isolator") },
      { id: "control-1", kind: "cooker-control", settings: of("control") },
      { id: "heater-1", kind: "appliance", settings: { appliance: "water-heater", ...of("appliance") } },
    ],
    cables: [{ from: "way-1.a", to: "fcu-1.a", ...of("cable") }],
    loads: [{ station: "heater-1", powerW: 100, ...of("load") }],
    readings: [{ test: "insulation", way: "way-1", ...of("reading") }],
    wants: [{ kind: "device", way: "way-1", ratingA: [32], ...of("want") }],
  };
};

/** What a building can have. */
const bounds = [
  { part: "cable", key: "lengthM", least: 0.01, most: 1000 },
  { part: "cable", key: "csaMm2", least: 0.1, most: 1000 },
  { part: "cable", key: "cpcCsaMm2", least: 0.1, most: 1000 },
  { part: "cable", key: "insulationMm", least: 0, most: 1e6 },
  { part: "cable", key: "depthMm", least: 0, most: 1e6 },
  { part: "load", key: "powerW", least: 0.1, most: 100_000 },
  { part: "supply", key: "zeOhm", least: 0.001, most: 100_000 },
  { part: "supply", key: "electrodeOhm", least: 0.001, most: 100_000 },
  { part: "way", key: "deviceRatingA", least: 0.1, most: 1000 },
  { part: "way", key: "rcdMa", least: 0, most: 30_000 },
  { part: "way", key: "floorAreaM2", least: 0.1, most: 100_000 },
  { part: "way", key: "letThroughA2s", least: 1, most: 1e9 },
  { part: "fcu", key: "fuseRatingA", least: 0.1, most: 1000 },
  { part: "isolator", key: "ratingA", least: 0.1, most: 1000 },
  { part: "control", key: "distanceToApplianceM", least: 0, most: 1000 },
  { part: "appliance", key: "litres", least: 0.1, most: 10_000 },
  { part: "appliance", key: "makersFuseA", least: 0.1, most: 1000 },
  { part: "reading", key: "resistanceOhm", least: 0, most: 100_000 },
  { part: "reading", key: "insulationMegohm", least: 0, most: 100_000 },
];

describe("a quantity of a wiring file", () => {
  it.each(bounds)(
    "$part $key may be from $least to $most; what is beyond is refused by its name with the bound",
    (bound) => {
      const { part, key, least, most } = bound;
      const read = (value: number) => readWiring(file(part, { [key]: value }), "wiring.json");
      for (const value of [least, most]) expect(read(value)).toMatchObject({ ok: true });
      const refusal = (value: number): string[] => {
        const answer = read(value);
        if (answer.ok) return ["accepted"];
        return answer.problems
          .filter(({ field }) => field.endsWith(`.${key}`))
          .map(({ message, remedy }) => `${message}: ${remedy}`);
      };
      for (const value of [least - 0.0001, -1])
        expect(refusal(value)).toEqual([expect.stringMatching(`^${value} .*at least ${least}\\b`)]);
      for (const value of [most * 1.001, most * 1e6])
        expect(refusal(value)).toEqual([expect.stringMatching(`^${value} .*at most ${most}\\b`)]);
    },
  );

  it("ratings a task lets the device have are held to 1 kA too", () => {
    expect(readWiring(file("want", { ratingA: [1001] }), "wiring.json").ok).toBe(false);
  });
});

describe("a hidden fault", () => {
  it.each([
    { kind: "high-resistance", cable: "a~b", role: "L", resistanceOhm: 100_001 },
    { kind: "high-resistance", cable: "a~b", role: "L", resistanceOhm: 0 },
    { kind: "wrong-cpc", cable: "a~b", cpcCsaMm2: 1001 },
    { kind: "low-insulation", cable: "a~b", between: ["L", "E"], insulationMegohm: 100_001 },
  ])("is refused beyond what a building can have: %o", (fault) => {
    expect(hiddenFaultSchema.safeParse(fault).success).toBe(false);
  });
});
