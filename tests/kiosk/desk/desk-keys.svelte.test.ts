import { type Component, tick } from "svelte";
import { afterEach, describe, expect, it, vi } from "vitest";
import { render } from "vitest-browser-svelte";
import { Desk } from "../../../kiosk/desk/desk-state.svelte.ts";
import { DeskWords } from "../../../kiosk/desk/desk-words.svelte.ts";
import KeepingPart from "../../../kiosk/desk/keep/KeepingPart.svelte";
import LivePage from "../../../kiosk/desk/LivePage.svelte";
import SaveFile from "../../../kiosk/desk/SaveFile.svelte";
import type { CableId } from "../../../shared/board/ids.ts";
import { endReasons } from "../../../shared/protocol/attempt-words.ts";
import type { StaffRole } from "../../../shared/protocol/author.ts";
import type { DeskLive } from "../../../shared/protocol/desk-view.ts";
import type { KeepingView, TaskView } from "../../../shared/protocol/keep-view.ts";
import type { Sent } from "../show-bench.ts";
import DeskStage from "./DeskStage.svelte";

/** Puts a part of the desk up; gives what it asks the bench for. */
async function shown<Given extends Record<string, unknown>>(part: Component<Given>, given: Given) {
  const sent: Sent[] = [];
  const desk = new Desk(new DeskWords());
  desk.sendBy(async (name, command) => {
    sent.push({ name, command });
    return { ok: true };
  });
  // The stage hands on to the part what the part asks for, and knows no more of it.
  const staged = part as unknown as Component<Record<string, unknown>>;
  await render(DeskStage, { desk, part: staged, given });
  return { sent };
}

const found = (id: string): HTMLElement | null => document.querySelector(`[data-testid="${id}"]`);
function press(id: string): void {
  const key = found(id);
  if (!key) throw new Error(`no ${id}`);
  key.click();
}

/** The bench answers what each address is asked for; an address without an answer is not there. */
function answering(answers: Record<string, (signal?: AbortSignal | null) => Response>) {
  const asked: string[] = [];
  vi.stubGlobal("fetch", async (address: string, init?: RequestInit) => {
    const [path = ""] = address.split("?");
    asked.push(`${init?.method ?? "GET"} ${path}`);
    return answers[path]?.(init?.signal) ?? new Response("", { status: 404 });
  });
  return asked;
}
afterEach(() => vi.unstubAllGlobals());

const row: NonNullable<DeskLive["work"]>["row"] = {
  id: "a-1",
  otherBench: null,
  learner: "Bryony Cole",
  scenario: "first-spur",
  title: { en: "The first spur", pl: "Pierwsze odgałęzienie" },
  mode: "assessed",
  kind: "first",
  status: "open",
  startedWallMs: 1_000_000,
  readyWallMs: null,
  handedInWallMs: null,
  tries: 0,
  proposal: null,
  isDecided: false,
  decision: null,
  isSealed: false,
  isReleased: false,
  review: null,
};
const liveFor = (role: StaffRole, change: Partial<DeskLive>): { live: DeskLive } => ({
  live: {
    me: { id: "p-1", name: "Maud Perrin", role },
    isAtBench: false,
    benchName: "Spurwise 1234",
    nowWallMs: 1_060_000,
    work: null,
    face: {} as DeskLive["face"],
    cableCount: 0,
    waiting: [],
    toDecide: [],
    samplesBy: null,
    sample: null,
    toFind: null,
    ...change,
  },
});
const work = {
  row,
  step: "wire" as const,
  isWaitingForTrainer: true,
  hidden: [],
  hiddenByTrainer: [],
  view: null,
};

describe("what lies on the bench", () => {
  it("goes on after a trainer at the desk has looked, or is ended by them with each reason there is", async () => {
    answering({});
    const { sent } = await shown(LivePage, liveFor("trainer", { work }));
    press("confirm");
    for (const why of endReasons) press(`end-${why}`);
    await tick();
    expect(sent).toEqual([
      { name: "confirm-resume", command: {} },
      ...endReasons.map((why) => ({ name: "end-attempt", command: { why } })),
    ]);
  });

  it("is not to be confirmed where nothing waits for it, and by nobody but a trainer", async () => {
    answering({});
    await shown(LivePage, liveFor("trainer", { work: { ...work, isWaitingForTrainer: false } }));
    expect([found("confirm"), found("end-learner-gone")?.tagName]).toEqual([null, "BUTTON"]);
    await shown(LivePage, liveFor("assessor", { work }));
    expect(document.querySelectorAll('[data-testid="confirm"], [data-testid^="end-"]')).toHaveLength(
      endReasons.length,
    );
  });

  it("is cleared for the next learner by a trainer, where cables are left", async () => {
    answering({});
    const { sent } = await shown(LivePage, liveFor("trainer", { cableCount: 2 }));
    press("clear-board");
    await tick();
    expect(sent).toEqual([{ name: "clear-board", command: {} }]);
  });
});

describe("what takes a while", () => {
  const keeping = (task: TaskView): KeepingView => ({
    task,
    folder: "/media/stick",
    backUps: [],
    isSealedByDefault: false,
    canUpdate: false,
    version: "1.0.0",
  });
  const going: TaskView = {
    what: "back-up",
    state: "going",
    step: "copying",
    doneCount: 40,
    totalCount: 100,
    problem: null,
    facts: {},
  };

  it("shows how far a back-up is, and Stop ends it: the bench is asked, and what it then says is shown", async () => {
    let task = going;
    const asked = answering({
      "/keep-data/keeping": () => Response.json(keeping(task)),
      "/keep-data/keeping/stop": () => {
        task = { ...going, state: "stopped" };
        return Response.json({});
      },
    });
    await shown(KeepingPart, {});
    await vi.waitFor(() => expect(found("task-going")).not.toBeNull());
    expect(document.querySelector("progress")?.value).toBeCloseTo(0.4);
    press("task-stop");
    await vi.waitFor(() => expect(found("task-stopped")).not.toBeNull());
    expect(asked).toContain("POST /keep-data/keeping/stop");
    expect(found("task-stop")).toBeNull();
  });

  it("shows how much of a file of evidence is there, and Stop ends it with nothing saved", async () => {
    const line = new TextEncoder().encode("one line\n");
    let isCancelled = false;
    answering({
      // It never ends by itself; as a browser's own, its body is broken off by the signal.
      "/evidence/attempts.csv": (signal) => {
        const start = (stream: ReadableStreamDefaultController<Uint8Array>) => {
          stream.enqueue(line);
          signal?.addEventListener("abort", () => {
            isCancelled = true;
            stream.error(signal.reason);
          });
        };
        return new Response(new ReadableStream({ start }), { headers: { "Spurwise-Lines": "4" } });
      },
    });
    await shown(SaveFile, { href: "/evidence/attempts.csv", label: "CSV", testId: "save" });
    press("save");
    await vi.waitFor(() => expect(found("save-progress")).toHaveProperty("value", 0.25));
    press("save-stop");
    await vi.waitFor(() => expect(found("save-end")?.textContent).toBe("Stopped."));
    expect(isCancelled).toBe(true);
  });
});

describe("a fault for the next start of a task", () => {
  const cable = "socket-1.b~socket-2.a" as CableId;
  const there = {
    fault: { kind: "open-core", cable, role: "N" },
    name: { kind: "open-core", place: cable, cores: ["N"] },
  } as const;
  const face = { stations: [] } as unknown as DeskLive["face"];
  const toFindOf = (hiddenNext: NonNullable<DeskLive["toFind"]>[number]["hiddenNext"]) => [
    {
      scenario: "silent-ring",
      title: { en: "The silent ring", pl: "Cichy pierścień" },
      cables: [cable],
      hiddenNext,
    },
  ];

  it("is hidden with those that wait already, said to wait, and taken back by a key of its own", async () => {
    answering({});
    const { sent } = await shown(LivePage, liveFor("trainer", { face, toFind: toFindOf([there]) }));
    expect(found("hidden-next")?.textContent).toContain("The silent ring (1)");
    press("hide-set");
    press("hide-take-back");
    await tick();
    expect(sent).toEqual([
      {
        name: "hide-next",
        command: {
          scenario: "silent-ring",
          faults: [there.fault, { kind: "open-core", cable, role: "L" }],
        },
      },
      { name: "hide-next", command: { scenario: "silent-ring", faults: [] } },
    ]);
  });

  it("is nothing that an assessor is shown", async () => {
    answering({});
    await shown(LivePage, liveFor("assessor", {}));
    expect(found("hide-next")).toBeNull();
  });
});
