import { describe, expect, it } from "vitest";
import type { FaultName } from "../../../shared/electrical/fault-name.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import type { CableId } from "../../../shared/board/ids.ts";
import { acts } from "../../../server/acts/acts.ts";
import { loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { answers, byStaff } from "../desk/assessed-work.ts";
import { rightCables, firstSpur, TestBench } from "../test-bench.ts";
import { act, atTest, nulled, probe, record, test } from "./dead-tests.ts";

const cable = "socket-1.b~socket-2.a" as CableId;
const broken: HiddenFault = { kind: "open-core", cable, role: "N" };
const rightName: FaultName & { cores: ("L" | "N" | "E")[] } = {
  kind: "open-core",
  place: cable,
  cores: ["N"],
};

const asHunt = (fault: HiddenFault): Partial<Scenario> => {
  const { requirements } = firstSpur().scenario;
  return {
    hiddenFaults: [fault],
    requirements: [...requirements, { kind: "fault-named", faults: ["hidden-1"] }],
  };
};

/** A hunt on the ring of the small board, at the step Test with the ends at the way taken apart. */
async function atHunt(fault: HiddenFault = broken, mode: "practice" | "assessed" = "practice") {
  const bench = await atTest({ mode, ...asHunt(fault) });
  await readyToMeasure(bench);
  return bench;
}

/** Leads nulled, every part that can be in out, the ends at the way taken apart. */
async function readyToMeasure(bench: TestBench): Promise<void> {
  await nulled(bench);
  for (const { station, part } of test(bench).parts)
    await act(bench, { what: "part", station, part, isIn: false });
  await act(bench, { what: "ring-ends", state: "released" });
}

/** What is said of the hunt's own requirement. */
const ofHunt = (bench: TestBench) => bench.attempt().verdict?.requirements.at(-1)?.answer;

async function readEnds(bench: TestBench, role: "L" | "N" | "E") {
  const shows = await probe(bench, `way-1.a.${role}`, `way-1.b.${role}`);
  await record(bench, "ring-step-1");
  return shows;
}

describe("a hunt", () => {
  it("is won by the reading that shows the fault and by its name, in the order of the tests", async () => {
    const bench = await atHunt();
    expect(bench.attempt().hunt).toEqual({ faultCount: 1, named: [] });
    await readEnds(bench, "L");
    expect(bench.events("faults-shown")).toEqual([]);
    expect(await readEnds(bench, "N")).toEqual({ shows: "over-range" });
    expect(bench.events("faults-shown").map(({ content }) => content)).toEqual([{ faults: [0] }]);
    await bench.does("name-fault", { name: rightName });
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt).toEqual({
      faultCount: 1,
      named: [rightName],
      result: {
        faults: [{ fault: rightName, isKindRight: true, isPlaceRight: true, isShown: true }],
        isOrderKept: true,
        readingCount: 2,
        points: 4,
        mostPoints: 4,
      },
    });
    expect(ofHunt(bench)).toBe("met");
    expect(bench.events("handed-in")[0]?.content["hunt"]).toEqual({ points: 4, mostPoints: 4 });
  });

  it("is a guess where no reading on record showed it before it was named", async () => {
    const bench = await atHunt();
    await bench.does("name-fault", { name: rightName });
    await readEnds(bench, "N");
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt?.result).toMatchObject({
      points: 3,
      faults: [{ isKindRight: true, isPlaceRight: true, isShown: false }],
    });
  });

  it.each<[string, typeof rightName, { isKindRight: boolean; isPlaceRight: boolean }, number]>([
    ["another core", { ...rightName, cores: ["L"] }, { isKindRight: true, isPlaceRight: false }, 3],
    [
      "another cable",
      { ...rightName, place: "socket-1.a~way-1.a" },
      { isKindRight: true, isPlaceRight: false },
      3,
    ],
    [
      "another kind",
      { ...rightName, kind: "high-resistance" },
      { isKindRight: false, isPlaceRight: true },
      3,
    ],
    [
      "nothing that is so",
      { kind: "crossed-cores", place: "socket-1.a~way-1.a", cores: ["L", "N"] },
      { isKindRight: false, isPlaceRight: false },
      1,
    ],
  ])("that names %s has that much right", async (_, name, half, points) => {
    const bench = await atHunt();
    await readEnds(bench, "N");
    await bench.does("name-fault", { name });
    await bench.does("hand-in", {});
    const { result } = bench.attempt().hunt!;
    expect(result?.faults[0]).toMatchObject(half);
    expect(result?.points).toBe(points);
    expect(ofHunt(bench)).toBe("not-yet");
  });

  it("loses the point of the order where insulation came before continuity", async () => {
    const bench = await atHunt();
    await act(bench, { what: "dial", to: "insulation" });
    await probe(bench, "way-1.a.L", "way-1.a.N");
    await act(bench, { what: "press" });
    await record(bench, "insulation");
    await act(bench, { what: "dial", to: "low-ohms" });
    await readEnds(bench, "N");
    await bench.does("name-fault", { name: rightName });
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt?.result).toMatchObject({ isOrderKept: false, points: 3 });
  });

  it("does not say before the hand-in whether the name is right, nor takes more names than there are faults", async () => {
    const bench = await atHunt();
    const wrong = { ...rightName, cores: ["E" as const] };
    await bench.does("name-fault", { name: wrong });
    await bench.does("ask-verdict", {});
    expect(ofHunt(bench)).toBe("cannot-say");
    expect(await bench.refusal("name-fault", { name: rightName })).toBe("all-named");
    await bench.does("name-fault", { name: wrong, isTakenBack: true });
    await bench.does("name-fault", { name: rightName });
    await bench.does("ask-verdict", {});
    expect(ofHunt(bench)).toBe("cannot-say");
    const { schema } = acts["name-fault"];
    expect(schema.safeParse({ name: { ...rightName, cores: ["L", "N"] } }).success).toBe(false);
    expect(schema.safeParse({ name: rightName }).success).toBe(true);
    expect(await bench.refusal("name-fault", { name: { ...rightName, place: "socket-9.a~way-1.a" } })).toBe(
      "no-such-place",
    );
  });

  it("tells an assessed learner nothing, at the hand-in either", async () => {
    const bench = await atHunt(broken, "assessed");
    await readEnds(bench, "N");
    await bench.does("name-fault", { name: rightName });
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt).toEqual({ faultCount: 1, named: [rightName] });
    expect(bench.attempt().verdict).toBeNull();
    expect(bench.events("handed-in")[0]?.content["hunt"]).toEqual({ points: 4, mostPoints: 4 });
  });

  it("tells an assessed learner what was hidden once the decision is released, on the bench and when they come back", async () => {
    const bench = await atHunt(broken, "assessed");
    await readEnds(bench, "N");
    await bench.does("name-fault", { name: { ...rightName, cores: ["E"] } });
    await bench.does("hand-in", {});
    const { id } = bench.attempt();
    const criteria = answers().map((answer) => ({ ...answer, reason: "As seen." }));
    const steps = [
      () => byStaff(bench, "assessor", "decide", { attempt: id, criteria, says: "" }),
      () => byStaff(bench, "assessor", "seal-decision", { attempt: id }),
      () => byStaff(bench, "assessor", "release", { attempt: id }),
    ];
    for (const step of steps) {
      expect(bench.attempt().hunt?.result).toBeUndefined();
      expect(await step()).toBe("done");
    }
    const result = {
      faults: [{ fault: rightName, isKindRight: true, isPlaceRight: false, isShown: true }],
      points: 3,
    };
    expect(bench.attempt().hunt?.result).toMatchObject(result);
    await bench.does("leave-attempt", {});
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    expect(bench.view().outcomes).toMatchObject([{ attempt: id, hunt: result }]);
  });
});

describe("what is hidden in a cable", () => {
  const isWhole = async (bench: TestBench) => {
    await act(bench, { what: "ring-ends", state: "released" });
    return (await probe(bench, "way-1.a.N", "way-1.b.N")).shows === "ohm";
  };

  it("goes once the cable has been out for two seconds, and stays where it was out for less", async () => {
    const bench = await atHunt();
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(1500);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(await isWhole(bench)).toBe(false);
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(2100);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(await isWhole(bench)).toBe(true);
    expect(bench.events("hidden-fault-ended").map(({ content }) => content)).toEqual([{ cable }]);
  });

  it("waits for its cable as long as the circuit is made as it was found, and as long again at the step Test", async () => {
    const bench = await new TestBench({ scenarios: [firstSpur(asHunt(broken))] }).start();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    const [first, ...others] = rightCables;
    await bench.cable(...first!, 2.5);
    bench.clock.advance(30_000);
    await bench.does("go-to-step", { step: "test" });
    bench.clock.advance(30_000);
    for (const [from, to] of others) await bench.cable(from, to, 2.5);
    await readyToMeasure(bench);
    expect(await isWhole(bench)).toBe(false);
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(2100);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(await isWhole(bench)).toBe(true);
  });

  it("waits for its cable through a power cut while the circuit is still made as it was found", async () => {
    const scenarios = [firstSpur(asHunt(broken))];
    const before = await new TestBench({ scenarios }).start();
    await before.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    await before.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await before.does("accept-caution", {});
    await before.does("go-to-step", { step: "test" });
    const [first, ...others] = rightCables;
    await before.cable(...first!, 2.5);
    before.clock.advance(30_000);
    before.cutPower();
    const bench = await new TestBench({ folder: before.folder, scenarios }).start();
    bench.clock.advance(30_000);
    for (const [from, to] of others) await bench.cable(from, to, 2.5);
    await readyToMeasure(bench);
    expect(await isWhole(bench)).toBe(false);
    expect(bench.events("hidden-fault-ended")).toEqual([]);
  });

  it("is still found after it was mended: what the readings showed and what was named stay", async () => {
    const bench = await atHunt();
    await readEnds(bench, "N");
    await bench.does("name-fault", { name: rightName });
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(2100);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt?.result?.points).toBe(4);
  });

  it("stays in a station whatever is pulled", async () => {
    const bench = await atHunt({ kind: "missing-link", station: "socket-1" as never, role: "N" });
    expect(await isWhole(bench)).toBe(false);
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(2100);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(await isWhole(bench)).toBe(false);
  });

  it("is the same after a power cut, with what was shown and named", async () => {
    const bench = await atHunt();
    await readEnds(bench, "N");
    await bench.does("name-fault", { name: rightName });
    const before = loadAttempt(bench.attempt().id, bench.rows())?.hunt;
    bench.cutPower();
    const after = await new TestBench({
      folder: bench.folder,
      scenarios: [firstSpur(asHunt(broken))],
    }).start();
    expect(after.bench.core.work.run?.state.hunt).toEqual(before);
    expect(before).toMatchObject({ faults: [broken], shownAfter: { 0: 1 }, named: [{ name: rightName }] });
    expect(await isWhole(after)).toBe(false);
  });
});

describe("an attempt of before hunts", () => {
  it("has what its scenario hides, though its log does not say so", async () => {
    const bench = await atHunt();
    const rows = bench.rows().filter(({ type }) => type !== "faults-hidden");
    const old = loadAttempt(bench.attempt().id, rows)!;
    expect(old.hunt).toBeNull();
    const { core } = bench.bench;
    expect(core.runOf(core.work.run!.kit, old).hiddenFaults).toEqual([broken]);
  });
});

const others: HiddenFault[] = [
  broken,
  { kind: "crossed-cores", cable: "socket-2.b~way-1.b", roles: ["L", "E"] },
  { kind: "high-resistance", cable: "socket-1.a~way-1.a", role: "E", resistanceOhm: 1.4 },
  { kind: "low-insulation", cable: "socket-1.c~socket-3.a", between: ["L", "N"], insulationMegohm: 0.25 },
  { kind: "wrong-cpc", cable: "socket-1.a~way-1.a", cpcCsaMm2: 1 },
  { kind: "missing-link", station: "socket-2" as never, role: "E" },
];

/** All that the screen is sent while a hunt is worked on without a reading, and every act of the step Test is done. */
async function sentIn(fault: HiddenFault, mode: "practice" | "assessed"): Promise<string[]> {
  const bench = await new TestBench({ scenarios: [firstSpur(asHunt(fault))] }).start();
  const sent: string[] = [];
  const keep = () => void sent.push(JSON.stringify({ ...bench.view(), revision: 0, benchName: "" }));
  const stop = bench.bench.core.onPublish(keep);
  await bench.isWiring(mode);
  for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
  bench.atRest();
  for (const step of ["test", "load", "hand-in", "wire", "test"] as const)
    await bench.refusal("go-to-step", { step });
  await act(bench, { what: "dial", to: "low-ohms" });
  await act(bench, { what: "probe", probe: "red", at: "way-1.a.L" as never });
  await bench.refusal("energise", { way: "way-1" as never });
  await bench.does("name-fault", { name: { ...rightName, cores: ["E"], kind: "open-core" } });
  if (mode === "practice") for (const one of ["ask-verdict", "ask-hint"] as const) await bench.does(one, {});
  await bench.does("pull", { what: "cable", cable });
  bench.clock.advance(3000);
  await bench.cable("socket-1.b", "socket-2.a", 2.5);
  await bench.does("ready", {});
  keep();
  const { id } = bench.attempt();
  if (mode === "assessed") {
    // Until the decision is released, the hand-in and what is decided tell the bench nothing either.
    await bench.does("hand-in", {});
    const criteria = answers().map((answer) => ({ ...answer, reason: "As seen." }));
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria, says: "" });
    expect(await byStaff(bench, "assessor", "seal-decision", { attempt: id })).toBe("done");
    keep();
  }
  stop();
  return sent.map((frame) => frame.replaceAll(id, "the-attempt"));
}

/** What the screen is sent where the first of them is hidden; made once a mode. */
const sentFirst = new Map<string, Set<string>>();

describe("what the screen is sent before the hand-in, and of assessed work before the release", () => {
  it.each(
    (["practice", "assessed"] as const).flatMap((mode) =>
      others.slice(1).map((fault) => ({ mode, kind: fault.kind, fault })),
    ),
  )(
    "is byte for byte the same whatever is hidden, as long as nothing is read: $kind, $mode",
    async ({ mode, fault }) => {
      const first = sentFirst.get(mode) ?? new Set(await sentIn(broken, mode));
      sentFirst.set(mode, first);
      expect(first.size).toBeGreaterThan(10);
      expect(new Set(await sentIn(fault, mode))).toEqual(first);
    },
  );
});
