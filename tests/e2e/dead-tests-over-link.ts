import type { ContactId, StationId } from "../../shared/board/ids.ts";
import type { MeterAct } from "../../shared/protocol/meter.schema.ts";
import type { BenchLink } from "./bench-link.ts";

const way = "way-1" as StationId;

/** All dead tests of a ring at way 1 as they should be done, without a page, and the way switched on. */
export const deadTestsOverLink = async (link: BenchLink, points: readonly string[]): Promise<void> => {
  const act = (done: MeterAct): Promise<void> => link.does("meter-act", done);
  /** Measures between two terminals, writes down what the meter shows and calls it a pass. */
  const measure = async (
    test: "ring-step-1" | "ring-step-2" | "ring-step-3" | "insulation",
    red: string,
    black: string,
  ) => {
    await act({ what: "probe", probe: "red", at: red as ContactId });
    await act({ what: "probe", probe: "black", at: black as ContactId });
    if (test === "insulation") await act({ what: "press" });
    const { attempt } = await link.seen(({ attempt: now }) => {
      const meter = now?.test?.meter;
      return meter?.red === red && meter.black === black && meter.shows.shows !== "press";
    });
    const shows = attempt?.test?.meter.shows;
    const value =
      shows?.shows === "ohm" ? { resistanceOhm: shows.resistanceOhm } : { isOverRange: true as const };
    await link.does("record-reading", { test, way, ...value, judged: "pass" });
  };
  await act({ what: "dial", to: "low-ohms" });
  await act({ what: "probe", probe: "red", at: "other-probe" });
  await act({ what: "null" });
  await act({ what: "ring-ends", state: "released" });
  for (const role of ["L", "N", "E"]) await measure("ring-step-1", `way-1.a.${role}`, `way-1.b.${role}`);
  for (const [test, role] of [
    ["ring-step-2", "N"],
    ["ring-step-3", "E"],
  ] as const) {
    await act({ what: "ring-ends", state: "crossed", with: role });
    for (const point of points) {
      await measure(test, `${point}.front.L`, `${point}.front.${role}`);
      if (role === "E") await link.does("record-reading", { test: "polarity", way, judged: "pass" });
    }
  }
  await act({ what: "ring-ends", state: "joined" });
  for (const { station, part } of link.view?.attempt?.test?.parts ?? [])
    await act({ what: "part", station, part, isIn: false });
  await act({ what: "dial", to: "insulation" });
  for (const [one, two] of ["LN", "LE", "NE"] as const)
    await measure("insulation", `way-1.a.${one}`, `way-1.a.${two}`);
  await link.does("energise", { way });
};
