import { describe, expect, it } from "vitest";
import { type Actor, type ActorKind, actors } from "../../../server/acts/actor.ts";
import { acts } from "../../../server/acts/acts.ts";
import { type WorkState, workStateOf, workStates } from "../../../server/attempt/work-state.ts";
import type { ActName } from "../../../shared/protocol/acts.ts";
import { firstSpur, TestBench } from "../test-bench.ts";
import { actSamples } from "./act-samples.ts";

const worker: ActorKind[] = ["learner", "guest"];
const beforeSetUp: ActorKind[] = ["nobody", "learner", "guest"];
const atBench: ActorKind[] = [...beforeSetUp, "trainer", "assessor", "verifier", "technician"];
const open: WorkState[] = ["caution", "make-dead", "wiring", "ready"];
const dead: WorkState[] = ["make-dead", "wiring"];

/**
 * Who may do what, and in which state of their own work, said a second time and by hand: the rights of the program
 * change only where they are changed in both places.
 */
const rights: { [Name in ActName]: [who: ActorKind[], states: readonly WorkState[]] } = {
  "set-language": [atBench, workStates],
  "set-large": [atBench, workStates],
  "sign-in": [atBench, workStates],
  "sign-out": [atBench, workStates],
  "start-attempt": [worker, ["none", "handed-in"]],
  "leave-attempt": [worker, [...open, "interrupted", "handed-in"]],
  "accept-caution": [worker, open],
  "go-to-step": [worker, ["make-dead", "wiring", "ready"]],
  "dead-act": [worker, dead],
  "declare-dead": [worker, dead],
  "answer-plan": [worker, dead],
  plug: [worker, ["wiring"]],
  "plug-cable": [worker, ["wiring"]],
  pull: [worker, ["wiring"]],
  "match-as-found": [worker, dead],
  undo: [worker, ["wiring"]],
  declare: [worker, ["wiring"]],
  "ask-verdict": [worker, ["wiring"]],
  "ask-hint": [worker, ["wiring"]],
  probe: [atBench, workStates],
  "meter-act": [worker, ["wiring"]],
  "record-reading": [worker, ["wiring"]],
  "ask-expected": [worker, ["wiring"]],
  "name-fault": [worker, ["wiring"]],
  energise: [worker, ["wiring"]],
  "switch-off": [worker, ["wiring"]],
  "record-live-reading": [worker, ["wiring"]],
  "switch-appliance": [worker, ["wiring"]],
  "move-load-clock": [worker, ["wiring"]],
  "choose-load-cable": [worker, ["wiring"]],
  "clear-loads": [worker, ["wiring"]],
  ready: [worker, ["wiring"]],
  "take-back": [worker, open],
  "hand-in": [worker, ["wiring", "ready"]],
  "self-check": [atBench, workStates],
  "self-check-cleared": [["trainer", "technician"], workStates],
  "walk-test": [atBench, workStates],
  "test-lead": [atBench, workStates],
  "set-up": [beforeSetUp, workStates],
  "show-act": [["nobody"], workStates],
  "hide-fault": [["trainer"], workStates],
  "unhide-fault": [["trainer"], workStates],
  "hide-next": [["trainer"], workStates],
  "add-person": [["trainer", "technician"], workStates],
  "adjust-person": [["trainer", "technician"], workStates],
  "hold-person": [["technician"], workStates],
  "erase-person": [["technician"], workStates],
  "renew-pin": [["technician"], workStates],
  "confirm-resume": [["trainer"], workStates],
  "end-attempt": [["trainer"], workStates],
  "clear-board": [["trainer"], workStates],
  "choose-network": [["technician"], workStates],
  "declare-own-work": [["learner"], ["handed-in"]],
  observe: [["trainer", "assessor"], workStates],
  decide: [["assessor"], workStates],
  "seal-decision": [["assessor"], workStates],
  release: [["assessor"], workStates],
  review: [["verifier"], workStates],
  "see-decision": [["learner"], workStates],
  "view-second": [["assessor", "verifier"], workStates],
  "draw-sample": [["verifier"], workStates],
  "freeze-bench": [["trainer"], workStates],
  "set-time": [["trainer"], workStates],
  "reset-bench": [["trainer"], workStates],
  "lead-act": [["trainer", "technician"], workStates],
  "lead-order": [["trainer"], workStates],
};

/** What one of the staff may also ask for from the network; everything else is for the bench's own screen. */
const fromNetwork: ActName[] = [
  "freeze-bench",
  "set-time",
  "confirm-resume",
  "end-attempt",
  "clear-board",
  "reset-bench",
  "lead-act",
  "lead-order",
  "observe",
  "decide",
  "seal-decision",
  "release",
  "review",
  "view-second",
  "draw-sample",
  "hide-fault",
  "unhide-fault",
  "hide-next",
  "adjust-person",
  "hold-person",
  "erase-person",
];

/** The acts of the desk on an attempt, on all that were decided, or on a person. */
const aboutAttempts: ActName[] = fromNetwork.slice(6);

/** Refused while assessed work is open on the bench, and with what. */
const notInAssessed: Partial<Record<ActName, string>> = {
  "ask-verdict": "not-in-assessed",
  "ask-hint": "no-hints-assessed",
  "ask-expected": "not-in-assessed",
  "choose-load-cable": "not-in-assessed",
  "walk-test": "not-in-assessed",
  "test-lead": "not-in-assessed",
  "set-up": "not-in-assessed",
};

/** What an act may still be refused with by its own code, where the table lets it through. */
const ownRefusals: Partial<Record<ActName, string[]>> = {
  // Somebody's work lies open, or they have signed in.
  "show-act": ["bench-in-use"],
  "hide-fault": ["no-such-attempt"],
  "unhide-fault": ["no-such-attempt"],
  "hide-next": ["no-such-scenario"],
  "sign-in": ["unknown-badge", "wait-to-try"],
  "set-up": ["wrong-code", "wait-to-try"],
  "add-person": ["demonstration"],
  "adjust-person": ["unknown-person"],
  "hold-person": ["unknown-person"],
  "erase-person": ["unknown-person"],
  "renew-pin": ["unknown-person"],
  "confirm-resume": ["nothing-to-confirm"],
  "end-attempt": ["nothing-to-end"],
  "clear-board": ["work-not-ended"],
  // The bench of these checks neither leads nor is led.
  "lead-act": ["no-lead"],
  "lead-order": ["no-lead"],
  "reset-bench": ["others-work-open", "others-work-waiting"],
  "declare-own-work": ["not-assessed"],
  observe: ["no-such-attempt"],
  decide: ["no-such-attempt"],
  "seal-decision": ["no-such-attempt"],
  release: ["no-such-attempt"],
  review: ["no-such-attempt"],
  "see-decision": ["no-such-attempt"],
  "view-second": ["no-such-attempt"],
  "draw-sample": ["nothing-to-sample"],
  "dead-act": ["locked"],
  "declare-dead": ["locked", "make-dead-first"],
  declare: ["not-a-choice"],
  // What another act of the same check has plugged.
  plug: ["in-use"],
  "plug-cable": ["in-use"],
  "self-check": ["board-not-empty"],
  "self-check-cleared": ["board-not-empty"],
  undo: ["nothing-to-undo"],
  pull: ["no-such-cable"],
  "match-as-found": [],
  // The small board has no probes.
  probe: ["no-attempt", "not-signed-in", "no-such-place"],
  "record-reading": ["no-reading"],
  "name-fault": ["no-hunt"],
  energise: ["tests-missing"],
  "record-live-reading": ["no-reading"],
  "switch-appliance": ["energise-first"],
  "move-load-clock": ["energise-first"],
  "choose-load-cable": ["no-such-cable"],
  "clear-loads": ["energise-first"],
  "walk-test": ["no-probes"],
  "start-attempt": ["others-work-open"],
};

const refusalIn: Record<WorkState, string> = {
  none: "no-attempt",
  caution: "caution-first",
  "make-dead": "make-dead-first",
  wiring: "not reached: what is refused in the wiring has its own word",
  ready: "frozen",
  interrupted: "trainer-confirms",
  "handed-in": "handed-in",
};

const existing = firstSpur({
  isExistingCircuit: true,
  asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never,
});

const ids = { learner: "demo-02", guest: null } as const;

/** A bench with the work of a learner or a guest in a state. */
async function benchIn(state: WorkState, who: "learner" | "guest" = "learner"): Promise<TestBench> {
  const scenarios = [state === "make-dead" ? existing : firstSpur()];
  const bench = await new TestBench({ scenarios }).start();
  const enter = who === "guest" ? { by: who } : { by: "badge" as const, badge: "SPURWISE-DEMO-02" };
  await bench.does("sign-in", enter);
  if (state === "none") return bench;
  const mode = state === "interrupted" ? "assessed" : "practice";
  await bench.does("start-attempt", { scenario: "first-spur", mode });
  if (state === "caution") return bench;
  await bench.does("accept-caution", {});
  if (state === "make-dead") return bench;
  await bench.does("go-to-step", { step: "wire" });
  if (state === "wiring") return bench;
  if (state === "interrupted") {
    bench.cutPower();
    return new TestBench({ folder: bench.folder, scenarios }).start();
  }
  await bench.does(state === "ready" ? "ready" : "hand-in", {});
  return bench;
}

const actorOf = (kind: ActorKind): Actor => ({
  kind,
  learner: kind === "learner" ? ids.learner : null,
  session: kind === "nobody" ? null : "session-1",
});

async function send(bench: TestBench, name: ActName, kind: ActorKind): Promise<string> {
  const answer = await bench.bench.handle(name, actSamples[name], { actor: actorOf(kind) });
  return answer.ok ? "done" : answer.code;
}

const trace = (bench: TestBench): object => ({
  rows: bench.rows().length,
  requests: bench.port.requests.length,
  view: { ...bench.view(), revision: 0 },
});

/** Everybody but who works at the bench has no work of their own there, whatever lies on it. */
const stateFor = (kind: ActorKind, state: WorkState): WorkState => (worker.includes(kind) ? state : "none");
const isAllowed = (name: ActName, kind: ActorKind, state: WorkState): boolean => {
  const [who, states] = rights[name];
  return who.includes(kind) && states.includes(stateFor(kind, state));
};
const expected = (name: ActName, kind: ActorKind, state: WorkState): string => {
  if (!rights[name][0].includes(kind)) return kind === "nobody" ? "not-signed-in" : "not-for-you";
  if (name === "start-attempt") return "attempt-open";
  if (name === "declare-own-work") return "not-handed-in";
  return refusalIn[stateFor(kind, state)];
};

const names = Object.keys(acts) as ActName[];
const hosts = workStates.flatMap((state) =>
  (state === "interrupted" ? (["learner"] as const) : (["learner", "guest"] as const)).map((host) => ({
    state,
    host,
  })),
);
/** On a guest's work only the guest is tried: everybody else is tried on the learner's. */
const kindsOn = (host: "learner" | "guest"): ActorKind[] =>
  host === "guest" ? ["guest"] : actors.filter((kind) => kind !== "guest");

describe("the table of acts", () => {
  it("has every act that a screen may send, and a message to try it with", () => {
    expect(Object.keys(actSamples).sort()).toEqual([...names].sort());
    for (const name of names) expect(acts[name].schema.safeParse(actSamples[name]).success, name).toBe(true);
  });

  it("lets nothing be done in the name of the bench itself", () => {
    expect(names.filter((name) => acts[name].who.includes("bench"))).toEqual([]);
  });
});

describe.each(hosts)("on a bench with the work of a $host: $state", ({ state, host }) => {
  const tries = names.flatMap((name) => kindsOn(host).map((kind) => ({ name, kind })));

  it("what the table does not allow is refused for its one reason and changes nothing", async () => {
    const refused = tries.filter(({ name, kind }) => !isAllowed(name, kind, state));
    expect(refused.length).toBeGreaterThan(0);
    const bench = await benchIn(state, host);
    const before = trace(bench);
    const answers: object[] = [];
    for (const { name, kind } of refused) answers.push({ name, kind, code: await send(bench, name, kind) });
    expect(answers).toEqual(
      refused.map(({ name, kind }) => ({ name, kind, code: expected(name, kind, state) })),
    );
    bench.clock.advance(3000);
    expect(trace(bench)).toEqual(before);
  });

  it("what the table allows is not refused by it", async () => {
    const allowed = tries.filter(({ name, kind }) => isAllowed(name, kind, state));
    let bench = await benchIn(state, host);
    for (const { name, kind } of allowed) {
      const may = ["done", ...(ownRefusals[name] ?? [])];
      const assessed = state === "interrupted" ? notInAssessed[name] : undefined;
      const code = await send(bench, name, kind);
      if (assessed) expect({ name, kind, code }).toEqual({ name, kind, code: assessed });
      else expect(may, `${name} by ${kind}`).toContain(code);
      bench.clock.advance(3000);
      // What has moved on is no bench in this state any more.
      const { session, work } = bench.bench.core;
      if (session.person && workStateOf(work.state) === state) continue;
      await bench.stop();
      bench = await benchIn(state, host);
    }
  });
});

describe("from the network", () => {
  it("whoever has signed in may do nothing at the bench but what is said to be for them from there", async () => {
    const bench = await benchIn("interrupted");
    const before = trace(bench);
    const kinds = actors.filter((kind) => kind !== "bench" && !worker.includes(kind));
    for (const name of names.filter((one) => !fromNetwork.includes(one)))
      for (const kind of kinds) {
        const actor: Actor = { ...actorOf(kind), isRemote: true };
        const answer = await bench.bench.handle(name, actSamples[name], { actor });
        const code = rights[name][0].includes(kind) ? "own-screen-only" : expected(name, kind, "interrupted");
        expect({ name, kind, answer }).toMatchObject({ answer: { ok: false, code } });
      }
    expect(trace(bench)).toEqual(before);
    for (const name of fromNetwork) {
      const kind = rights[name][0][0] ?? "nobody";
      const actor: Actor = { ...actorOf(kind), staff: `demo-${kind}`, isRemote: true };
      const answer = await bench.bench.handle(name, actSamples[name], { actor });
      // The samples of the desk are of an attempt or a person that is not there.
      const found = aboutAttempts.includes(name) ? (answer.ok ? "done" : answer.code) : "";
      if (found === "") expect(answer, name).toEqual({ ok: true });
      else expect(ownRefusals[name], name).toContain(found);
    }
  });
});

describe("while assessed work is open", () => {
  it("what would tell of the wiring is refused to whoever stands at the bench, and changes nothing", async () => {
    const bench = await (await new TestBench().start()).isWiring("assessed");
    const before = trace(bench);
    for (const kind of actors)
      for (const [name, code] of Object.entries(notInAssessed) as [ActName, string][])
        // The open work is the learner's; a guest has none.
        if (isAllowed(name, kind, kind === "guest" ? "none" : "wiring"))
          expect(await send(bench, name, kind), name).toBe(code);
    expect(trace(bench)).toEqual(before);
  });

  it("nothing else is refused for it", async () => {
    const bench = await (await new TestBench().start()).isWiring("assessed");
    for (const name of names.filter((one) => !(one in notInAssessed) && one !== "sign-in"))
      expect(Object.values(notInAssessed), name).not.toContain(await send(bench, name, "trainer"));
  });

  it("and nobody's but its learner's: another who signs in has no work there", async () => {
    const bench = await (await new TestBench().start()).isWiring("assessed");
    const other: Actor = { kind: "learner", learner: "demo-03", session: "session-2" };
    for (const name of ["hand-in", "ready", "plug-cable", "leave-attempt"] as const) {
      const answer = await bench.bench.handle(name, actSamples[name], { actor: other });
      expect(answer).toMatchObject({ ok: false, code: "no-attempt" });
    }
  });
});
