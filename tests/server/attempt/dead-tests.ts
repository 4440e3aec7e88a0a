import type { ContactId, StationId } from "../../../shared/board/ids.ts";
import type { MeterAct } from "../../../shared/protocol/meter.schema.ts";
import type { TestView } from "../../../shared/protocol/test-view.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { deadSequence } from "../dead-sequence.ts";
import { firstSpur, rightCables, TestBench } from "../test-bench.ts";

export const way = "way-1" as StationId;
export const at = (contact: string): ContactId => contact as ContactId;

/** The ring of the small board with its spur, at the step Test. */
export async function atTest(
  options: { mode?: "practice" | "assessed"; csaMm2?: number } & Partial<Scenario> = {},
): Promise<TestBench> {
  const { mode = "practice", csaMm2 = 2.5, ...scenario } = options;
  // One that is made dead before the work.
  const found = { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never;
  const existing = scenario.isExistingCircuit ? { asFound: found } : {};
  const bench = await new TestBench({ scenarios: [firstSpur({ ...scenario, ...existing })] }).start();
  await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode });
  await bench.does("accept-caution", {});
  if (scenario.isExistingCircuit) for (const done of deadSequence) await bench.does("dead-act", done);
  await bench.does("go-to-step", { step: "wire" });
  for (const [from, to] of rightCables) await bench.cable(from, to, csaMm2);
  bench.atRest();
  await bench.does("go-to-step", { step: "test" });
  return bench;
}

export const test = (bench: TestBench): TestView => bench.attempt().test!;
export const act = (bench: TestBench, done: MeterAct): Promise<void> => bench.does("meter-act", done);

export async function probe(
  bench: TestBench,
  red: string,
  black: string,
): Promise<TestView["meter"]["shows"]> {
  await act(bench, { what: "probe", probe: "red", at: at(red) });
  await act(bench, { what: "probe", probe: "black", at: at(black) });
  return test(bench).meter.shows;
}

export async function nulled(bench: TestBench): Promise<void> {
  await act(bench, { what: "dial", to: "low-ohms" });
  await act(bench, { what: "probe", probe: "red", at: "other-probe" });
  await act(bench, { what: "null" });
}

/** Writes down what the meter shows and calls it a pass. */
export async function record(
  bench: TestBench,
  name: "ring-step-1" | "ring-step-2" | "ring-step-3" | "insulation",
) {
  const { shows } = test(bench).meter;
  const value =
    shows.shows === "ohm"
      ? { resistanceOhm: shows.resistanceOhm }
      : shows.shows === "megohm"
        ? { insulationMegohm: shows.insulationMegohm }
        : { isOverRange: true };
  await bench.does("record-reading", { test: name, way, ...value, judged: "pass" });
}

/** How the meter is nulled, where the probes get to by it, and which places of a point they are put on. */
interface Hands {
  nulls: (bench: TestBench) => Promise<void>;
  puts: (bench: TestBench, red: string, black: string) => Promise<unknown>;
  socketSide: "a" | "front";
  insulationAt: string;
}

/** All dead tests of the ring, as they should be done; by touch on the screen where nothing else is said. */
export async function allDeadTests(
  bench: TestBench,
  { nulls, puts, socketSide, insulationAt }: Hands = {
    nulls: nulled,
    puts: probe,
    socketSide: "a",
    insulationAt: "way-1.a",
  },
): Promise<void> {
  const sockets = ["socket-1", "socket-2", "socket-3"];
  await nulls(bench);
  await act(bench, { what: "ring-ends", state: "released" });
  for (const role of ["L", "N", "E"]) {
    await puts(bench, `way-1.a.${role}`, `way-1.b.${role}`);
    await record(bench, "ring-step-1");
  }
  for (const [name, other] of [
    ["ring-step-2", "N"],
    ["ring-step-3", "E"],
  ] as const) {
    await act(bench, { what: "ring-ends", state: "crossed", with: other });
    for (const socket of sockets) {
      await puts(bench, `${socket}.${socketSide}.L`, `${socket}.${socketSide}.${other}`);
      await record(bench, name);
      if (other === "E") await bench.does("record-reading", { test: "polarity", way, judged: "pass" });
    }
  }
  await act(bench, { what: "ring-ends", state: "joined" });
  for (const { station, part } of test(bench).parts)
    await act(bench, { what: "part", station, part, isIn: false });
  await act(bench, { what: "dial", to: "insulation" });
  for (const [one, two] of ["LN", "LE", "NE"] as const) {
    await puts(bench, `${insulationAt}.${one}`, `${insulationAt}.${two}`);
    await act(bench, { what: "press" });
    await record(bench, "insulation");
  }
}
