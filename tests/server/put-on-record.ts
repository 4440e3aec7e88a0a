import type { MeterAct } from "../../shared/protocol/meter.schema.ts";
import type { TestView } from "../../shared/protocol/test-view.ts";
import type { Built } from "../../shared/scenario/scenario.schema.ts";
import type { Reading } from "../../shared/wiring/wiring.schema.ts";
import type { TestBench } from "./test-bench.ts";

/** Takes the readings of an answer one by one with the meter, as it says they were taken, and writes them down. */
export async function putOnRecord(bench: TestBench, { readings = [] }: Built): Promise<void> {
  if (readings.length > 0) await bench.does("go-to-step", { step: "test" });
  for (const reading of readings) {
    for (const done of actsOf(reading, bench.attempt().test!)) await bench.does("meter-act", done);
    const { test, way, resistanceOhm, insulationMegohm, isOverRange, judged = "pass" } = reading;
    await bench.does("record-reading", {
      test,
      way,
      judged,
      ...(resistanceOhm === undefined ? {} : { resistanceOhm }),
      ...(insulationMegohm === undefined ? {} : { insulationMegohm }),
      ...(isOverRange ? { isOverRange } : {}),
    });
  }
}

/** What has to be done at the meter, the way and the points so that a reading is taken as it was. */
function actsOf({ test, red, black, taken }: Reading, { meter, parts }: TestView): MeterAct[] {
  const left = (taken?.partsIn ?? []).map(({ station, part }) => `${station} ${part}`);
  const nulling: MeterAct[] = [
    { what: "dial", to: "low-ohms" },
    { what: "probe", probe: "red", at: "other-probe" },
    { what: "null" },
  ];
  const ends = {
    what: "ring-ends" as const,
    state: taken?.ringEnds ?? "joined",
    ...(taken?.crossedWith ? { with: taken.crossedWith } : {}),
  };
  return [
    ...(taken && taken.nulledOhm > 0 && !meter.isNulled ? nulling : []),
    ends,
    ...parts.map(({ station, part }): MeterAct => ({
      what: "part",
      station,
      part,
      isIn: left.includes(`${station} ${part}`),
    })),
    { what: "dial", to: test === "insulation" ? "insulation" : "low-ohms" },
    { what: "probe", probe: "red", at: red ?? null },
    { what: "probe", probe: "black", at: black ?? null },
    ...(test === "insulation" ? [{ what: "press" } satisfies MeterAct] : []),
  ];
}
