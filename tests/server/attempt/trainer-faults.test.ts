import { describe, expect, it } from "vitest";
import type { CableId } from "../../../shared/board/ids.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { nameOfFault } from "../../../shared/electrical/fault-name.ts";
import { loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { rightCables, TestBench } from "../test-bench.ts";
import { act, nulled, probe, record, test } from "./dead-tests.ts";

const cable = "socket-1.b~socket-2.a" as CableId;
const broken: HiddenFault = { kind: "open-core", cable, role: "N" };
const faults: HiddenFault[] = [
  broken,
  { kind: "crossed-cores", cable: "socket-2.b~way-1.b", roles: ["L", "E"] },
  { kind: "high-resistance", cable: "socket-1.a~way-1.a", role: "E", resistanceOhm: 1.4 },
  { kind: "low-insulation", cable: "socket-1.c~socket-3.a", between: ["L", "N"], insulationMegohm: 0.25 },
  { kind: "wrong-cpc", cable: "socket-1.a~way-1.a", cpcCsaMm2: 1 },
  { kind: "missing-link", station: "socket-2" as never, role: "E" },
];
const trainer = {
  actor: { kind: "trainer", learner: null, session: "desk-1", staff: "maud", isRemote: true },
} as const;

/** A trainer at the desk hides a fault in the work that lies on the bench; "done", or why not. */
async function hide(bench: TestBench, fault: HiddenFault, attempt = bench.attempt().id): Promise<string> {
  const answer = await bench.bench.handle("hide-fault", { attempt, fault }, trainer);
  bench.clock.advance(0);
  return answer.ok ? "done" : answer.code;
}

/** A trainer takes one back; "done", or why not. */
async function unhide(bench: TestBench, fault: HiddenFault, attempt = bench.attempt().id): Promise<string> {
  const { cores, ...name } = nameOfFault(fault);
  const command = { attempt, name: { ...name, cores: [...cores] } };
  const answer = await bench.bench.handle("unhide-fault", command, trainer);
  bench.clock.advance(0);
  return answer.ok ? "done" : answer.code;
}

async function wired(mode: "practice" | "assessed" = "practice"): Promise<TestBench> {
  const bench = await (await new TestBench().start()).isWiring(mode);
  for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
  bench.atRest();
  return bench;
}

async function readNeutralEnds(bench: TestBench) {
  await bench.does("go-to-step", { step: "test" });
  await nulled(bench);
  for (const { station, part } of test(bench).parts)
    await act(bench, { what: "part", station, part, isIn: false });
  await act(bench, { what: "ring-ends", state: "released" });
  return probe(bench, "way-1.a.N", "way-1.b.N");
}

describe("a fault that a trainer hides while a learner works", () => {
  it("is seen by the meter, found by its name, and told at the hand-in", async () => {
    const bench = await wired();
    expect(await hide(bench, broken)).toBe("done");
    expect(await readNeutralEnds(bench)).toEqual({ shows: "over-range" });
    await record(bench, "ring-step-1");
    await bench.does("name-fault", { name: { kind: "open-core", place: cable, cores: ["N"] } });
    await bench.does("hand-in", {});
    expect(bench.attempt().hunt?.result?.faults).toEqual([
      expect.objectContaining({ isKindRight: true, isPlaceRight: true, isShown: true }),
    ]);
  });

  it("changes nothing that is sensed or judged", async () => {
    const bench = await wired();
    const before = JSON.stringify(bench.bench.core.work.run?.judged().verdict);
    await hide(bench, broken);
    expect(JSON.stringify(bench.bench.core.work.run?.judged().verdict)).toBe(before);
  });

  it("stands in the log with the trainer as its author, and comes back after a power cut", async () => {
    const bench = await wired();
    await hide(bench, broken);
    expect(bench.events("fault-set")).toEqual([
      {
        type: "fault-set",
        author: { by: "trainer", session: "desk-1" },
        content: { fault: broken, person: "maud" },
      },
    ]);
    const { id } = bench.attempt();
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(after.bench.core.work.run?.hiddenFaults).toEqual([broken]);
    expect(loadAttempt(id, after.rows())?.hunt?.faults).toEqual([broken]);
  });

  it("can be taken back until a reading is on record; what others hid stays, and with the last the hunt is over", async () => {
    const bench = await wired();
    const other = faults[1]!;
    for (const fault of [broken, other]) expect(await hide(bench, fault)).toBe("done");
    expect(await unhide(bench, other)).toBe("done");
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([broken]);
    expect(bench.attempt().hunt?.faultCount).toBe(1);
    expect(await unhide(bench, other)).toBe("no-such-place");
    expect(await unhide(bench, broken)).toBe("done");
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([]);
    expect(bench.attempt().hunt).toBeUndefined();
    const { id } = bench.attempt();
    expect(loadAttempt(id, bench.rows())?.hunt).toBeNull();

    await hide(bench, broken);
    await readNeutralEnds(bench);
    await record(bench, "ring-step-1");
    expect(await unhide(bench, broken)).toBe("already-tested");
    expect(await unhide(bench, broken, "another")).toBe("no-such-attempt");
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([broken]);
  });

  it("goes with its cable, and a later one in the cable that was laid anew stands", async () => {
    const bench = await wired();
    await hide(bench, broken);
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(2100);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([]);
    expect(await hide(bench, { ...broken, role: "L" })).toBe("done");
    expect(bench.bench.core.work.run?.hiddenFaults).toContainEqual({ ...broken, role: "L" });
  });

  it.each<[string, HiddenFault, string]>([
    ["in a cable that is not in", { ...broken, cable: "socket-9.a~way-1.a" }, "no-such-cable"],
    [
      "in a link where one cable ends",
      { kind: "missing-link", station: "socket-3" as never, role: "N" },
      "no-such-place",
    ],
    ["between a core and itself", { kind: "crossed-cores", cable, roles: ["L", "L"] }, "not-a-choice"],
    ["of a cpc as thick as the others", { kind: "wrong-cpc", cable, cpcCsaMm2: 2.5 }, "not-a-choice"],
  ])("is refused %s, and changes nothing", async (_, fault, code) => {
    const bench = await wired();
    expect(await hide(bench, fault)).toBe(code);
    expect(bench.events("fault-set")).toEqual([]);
    expect(bench.attempt().hunt).toBeUndefined();
  });

  it("is refused twice, a fifth time, for other work, and once a reading is on record", async () => {
    const bench = await wired();
    expect(await hide(bench, broken, "another")).toBe("no-such-attempt");
    expect(await hide(bench, broken)).toBe("done");
    expect(await hide(bench, broken)).toBe("in-use");
    for (const fault of faults.slice(1, 4)) expect(await hide(bench, fault)).toBe("done");
    expect(await hide(bench, faults[4]!)).toBe("all-hidden");
    const other = await wired();
    await readNeutralEnds(other);
    await record(other, "ring-step-1");
    expect(await hide(other, broken)).toBe("already-tested");
    await other.does("hand-in", {});
    expect(await hide(other, broken)).toBe("no-such-attempt");
  });
});

/** All that the screen is sent from the moment a fault is hidden, while every step is looked at and nothing is read. */
async function sentWith(fault: HiddenFault, mode: "practice" | "assessed"): Promise<string[]> {
  const bench = await wired(mode);
  const sent: string[] = [];
  const keep = () => void sent.push(JSON.stringify({ ...bench.view(), revision: 0, benchName: "" }));
  const stop = bench.bench.core.onPublish(keep);
  expect(await hide(bench, fault)).toBe("done");
  keep();
  for (const step of ["test", "load", "hand-in", "wire", "test"] as const)
    await bench.refusal("go-to-step", { step });
  await act(bench, { what: "dial", to: "low-ohms" });
  await act(bench, { what: "probe", probe: "red", at: "way-1.a.L" as never });
  if (mode === "practice") for (const one of ["ask-verdict", "ask-hint"] as const) await bench.does(one, {});
  await bench.does("ready", {});
  keep();
  stop();
  const { id } = bench.attempt();
  return sent.map((frame) => frame.replaceAll(id, "the-attempt"));
}

describe("what the learner's screen is sent before the hand-in", () => {
  it.each(["practice", "assessed"] as const)(
    "is byte for byte the same whatever the trainer hid, as long as nothing is read: %s",
    async (mode) => {
      const first = new Set(await sentWith(broken, mode));
      expect(first.size).toBeGreaterThan(5);
      for (const fault of faults.slice(1)) expect(new Set(await sentWith(fault, mode))).toEqual(first);
    },
  );
});
