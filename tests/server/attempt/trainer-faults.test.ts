import { describe, expect, it } from "vitest";
import type { CableId } from "../../../shared/board/ids.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { nameOfFault } from "../../../shared/electrical/fault-name.ts";
import { loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { deskLive } from "../../../server/desk/desk-live.ts";
import type { Staff } from "../../../server/people/person.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { firstSpur, rightCables, TestBench } from "../test-bench.ts";
import { deadSequence } from "../dead-sequence.ts";
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

const maud = { id: "maud", name: "Maud", role: "trainer" } as unknown as Staff;

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

const asFound = {
  cables: rightCables.map(([from, to]) => ({ from, to, csaMm2: 2.5 })),
} as unknown as Scenario["asFound"];

/** A trainer hides faults for the next start of the first spur, all of it there to find; "done", or why not. */
async function hideNext(bench: TestBench, faults: HiddenFault[], scenario = "first-spur"): Promise<string> {
  const answer = await bench.bench.handle("hide-next", { scenario, faults }, trainer);
  bench.clock.advance(0);
  return answer.ok ? "done" : answer.code;
}

const benchToFind = async (folder?: string): Promise<TestBench> =>
  await new TestBench({
    ...(folder ? { folder } : {}),
    scenarios: [firstSpur({ asFound, isExistingCircuit: true })],
  }).start();

/** The task is started, its circuit made dead and laid as it was found. */
async function begun(bench: TestBench, mode: "practice" | "assessed"): Promise<void> {
  await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode });
  await bench.does("accept-caution", {});
  for (const what of deadSequence) await bench.does("dead-act", what);
  if (mode === "assessed") await bench.does("declare-dead", {});
  for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
  bench.atRest();
  await bench.does("go-to-step", { step: "wire" });
}

describe("a fault that a trainer hides for the next start of a task", () => {
  it("is there at the next start and not at the one after, and stands in the log as the trainer's", async () => {
    const bench = await benchToFind();
    expect(await hideNext(bench, [broken])).toBe("done");
    await begun(bench, "practice");
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([broken]);
    expect(bench.events("fault-set").map(({ content }) => content)).toEqual([
      { fault: broken, person: "maud" },
    ]);
    expect(await readNeutralEnds(bench)).toEqual({ shows: "over-range" });
    await bench.does("hand-in", {});
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([]);
  });

  it("waits through a power cut, is taken back by hiding nothing, and can be taken back once the work is begun", async () => {
    const before = await benchToFind();
    await hideNext(before, [broken]);
    before.cutPower();
    const bench = await benchToFind(before.folder);
    const hiddenNext = () => deskLive(bench.bench.core, maud, true, "en")?.toFind?.[0]?.hiddenNext;
    expect(hiddenNext()).toEqual([{ fault: broken, name: nameOfFault(broken) }]);
    expect(await hideNext(bench, [])).toBe("done");
    expect(hiddenNext()).toEqual([]);
    await hideNext(bench, [broken]);
    await begun(bench, "practice");
    expect(await unhide(bench, broken)).toBe("done");
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([]);
  });

  it("is told to trainers alone, and is none for visitors of an open day", async () => {
    const bench = await benchToFind();
    await hideNext(bench, [broken]);
    expect(deskLive(bench.bench.core, { ...maud, role: "assessor" }, true, "en")?.toFind).toBeNull();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "open-day" });
    expect(bench.bench.core.work.run?.hiddenFaults).toEqual([]);
  });

  it.each<[string, HiddenFault[], string, string]>([
    ["at a task that nobody knows", [broken], "another", "no-such-scenario"],
    [
      "in a cable that is not there to find",
      [{ ...broken, cable: "socket-9.a~way-1.a" }],
      "first-spur",
      "no-such-cable",
    ],
    ["twice", [broken, broken], "first-spur", "in-use"],
    [
      "of a cpc as thick as the others",
      [{ kind: "wrong-cpc", cable, cpcCsaMm2: 2.5 }],
      "first-spur",
      "not-a-choice",
    ],
  ])("is refused %s", async (_, hidden, scenario, code) => {
    expect(await hideNext(await benchToFind(), hidden, scenario)).toBe(code);
  });
});

/** All that the screen is sent from the moment a fault is hidden, while every step is looked at and nothing is read. */
async function sentWith(
  fault: HiddenFault,
  mode: "practice" | "assessed",
  when: "now" | "next",
): Promise<string[]> {
  const bench = when === "now" ? await wired(mode) : await benchToFind();
  const sent: string[] = [];
  const keep = () => void sent.push(JSON.stringify({ ...bench.view(), revision: 0, benchName: "" }));
  const stop = bench.bench.core.onPublish(keep);
  if (when === "now") expect(await hide(bench, fault)).toBe("done");
  else {
    expect(await hideNext(bench, [fault])).toBe("done");
    keep();
    await begun(bench, mode);
  }
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
  return sent.map((frame) =>
    // Of a bench without people of its own, drawn anew at each start.
    frame.replaceAll(id, "the-attempt").replace(/"firstStartCode":"[^"]+"/, ""),
  );
}

describe("what the learner's screen is sent before the hand-in", () => {
  it.each([
    ["practice", "now"],
    ["assessed", "now"],
    ["practice", "next"],
    ["assessed", "next"],
  ] as const)(
    "is byte for byte the same whatever the trainer hid, as long as nothing is read: %s, %s",
    async (mode, when) => {
      const first = new Set(await sentWith(broken, mode, when));
      expect(first.size).toBeGreaterThan(5);
      for (const fault of faults.slice(1)) expect(new Set(await sentWith(fault, mode, when))).toEqual(first);
    },
  );
});
