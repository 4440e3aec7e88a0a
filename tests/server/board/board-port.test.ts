import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it, onTestFinished } from "vitest";
import type { FromScanner } from "../../../hardware/scan/scanner-messages.ts";
import { LinesError } from "../../../hardware/lines/lines.ts";
import type { StartScanner } from "../../../server/board/scanner-channel.ts";
import { scannerProcess } from "../../../server/board/scanner-process.ts";
import type { BoardListener, BoardOpening, LeadResult } from "../../../server/board/scanner-port.ts";
import { ScannerClient } from "../../../server/scanner-client.ts";
import { type BoardLeads, noLeads } from "../../../shared/board/board-leads.ts";
import type { ContactId, EntryId } from "../../../shared/board/ids.ts";
import type { SensedState } from "../../../shared/board/sensed-state.schema.ts";
import { bundle } from "../bundle.ts";
import { ManualClock } from "../manual-clock.ts";
import { shippedBoard } from "../../hardware/scan/program-bench.ts";
import { processesOf } from "./processes-of.ts";
import { BoardDouble, soon } from "./board-double.ts";

let childPath = "";

beforeAll(async () => {
  const { path, remove } = await bundle("hardware/scan/scanner-child.ts");
  childPath = path;
  return remove;
});

/** Keeps what a board says and lets a check wait for it. */
class Listener implements BoardListener {
  readonly heard: string[] = [];
  readonly states: SensedState[] = [];
  lead: LeadResult | undefined;
  leads: BoardLeads | undefined;
  sensedRevision = 0;
  lostCount = 0;
  #wake: () => void = () => undefined;

  opened({ leads }: { leads: BoardLeads }): void {
    this.leads = leads;
    this.states.length = 0;
    this.#note("opened");
  }
  lost({ code }: { code: string }): void {
    this.lostCount += 1;
    this.#note(`lost ${code}`);
  }
  sensed(state: SensedState): void {
    this.states.push(state);
    this.#note("sensed");
  }
  moved({ leads, sensedRevision }: { leads: BoardLeads; sensedRevision: number }): void {
    Object.assign(this, { leads, sensedRevision });
    this.#note("moved");
  }
  selfCheckProgress(): void {
    this.#note("progress");
  }
  selfCheckResult(): void {
    this.#note("result");
  }
  walkTestTouch(contact: string, leftCount: number): void {
    this.#note(`touch ${contact}, ${leftCount} left`);
  }
  leadResult(result: LeadResult): void {
    this.lead = result;
    this.#note("lead");
  }

  /** True where the last state is at rest and can show what hands did last. */
  get isAtRest(): boolean {
    const state = this.states.at(-1);
    return state?.isSettled === true && state.revision >= this.sensedRevision;
  }

  /** The next word of the board. */
  next(): Promise<void> {
    return new Promise((resolve) => (this.#wake = resolve));
  }

  #note(word: string): void {
    if (this.heard.at(-1) !== word) this.heard.push(word);
    this.#wake();
  }
}

interface World {
  start: StartScanner;
  /** Waits until something is so. */
  until: (listener: Listener, isSo: () => boolean) => Promise<void>;
  hangs: () => void;
  dies: () => void;
}

const signal = (name: NodeJS.Signals): void => {
  for (const pid of processesOf(childPath)) process.kill(pid, name);
};

const worlds: { name: string; world: (clock: ManualClock) => World }[] = [
  {
    name: "in this process, on a clock moved by hand",
    world: (clock) => {
      const double = new BoardDouble().on(clock);
      return {
        start: double.start,
        until: async (_listener, isSo) => {
          for (let turn = 0; turn < 500 && !isSo(); turn += 1) {
            clock.advance(10);
            await soon();
          }
          expect(isSo()).toBe(true);
        },
        hangs: () => double.hangs(),
        dies: () => void double.dies(),
      };
    },
  },
  {
    name: "in a process of its own",
    world: () => ({
      start: scannerProcess(childPath),
      until: async (listener, isSo) => {
        while (!isSo()) await listener.next();
      },
      hangs: () => signal("SIGSTOP"),
      dies: () => signal("SIGKILL"),
    }),
  },
];

const [wayA, wayD, socketA] = ["way-1.a", "way-1.d", "socket-1.a"] as EntryId[] as [
  EntryId,
  EntryId,
  EntryId,
];
const contact = (text: string): ContactId => text as ContactId;

describe.each(worlds)("the board's port, its scanner $name", ({ world }) => {
  async function opened(boardName = "workshop-coded", lines: "simulated" | "gpio" = "simulated") {
    const clock = new ManualClock();
    const listener = new Listener();
    const { start, until, hangs, dies } = world(clock);
    const port = new ScannerClient({ start, lines, timers: clock, note: () => undefined });
    onTestFinished(() => port.close());
    const opening: BoardOpening = { board: shippedBoard(boardName) };
    port.open(() => opening, listener);
    const atRest = () => until(listener, () => listener.isAtRest);
    return { clock, listener, port, opening, until, atRest, hangs, dies };
  }

  const plug = (a: string, b: string) =>
    ({ type: "plug", contactA: contact(a), contactB: contact(b) }) as const;
  const lead = (a: string, b: string): [ContactId, ContactId] => [contact(a), contact(b)];

  it("senses, and answers each request with what is in now", async () => {
    const { listener, port, atRest } = await opened();
    await atRest();
    const answers = await Promise.all([
      port.request(plug("way-1.a.L", "socket-1.a.L")),
      port.request(plug("way-9.a.L", "socket-1.a.L")),
    ]);
    expect(answers).toEqual([
      { ok: true },
      { ok: false, code: "no-such-place", facts: { contact: "way-9.a.L" } },
    ]);
    expect(listener.leads).toEqual({ leads: [lead("socket-1.a.L", "way-1.a.L")], codes: [] });
    expect(listener.isAtRest).toBe(false);
    await atRest();
    expect(listener.states.at(-1)?.groups).toEqual([["socket-1.a.L", "way-1.a.L"]]);
    await port.request({ type: "set-leads", to: { leads: [], codes: [] } });
    await atRest();
    expect(listener.states.at(-1)?.groups).toEqual([]);
  });

  it("comes to rest also after a lead that shows nothing new, and at once where nothing was moved", async () => {
    const { listener, port, atRest } = await opened();
    await port.request(plug("way-1.a.L", "socket-1.a.L"));
    await port.request(plug("way-1.a.L", "socket-1.b.L"));
    await atRest();
    const shown = listener.states.at(-1);
    // The third lead closes a triangle: the copper is joined as before.
    await port.request(plug("socket-1.a.L", "socket-1.b.L"));
    expect(listener.isAtRest).toBe(false);
    await atRest();
    expect(listener.states.at(-1)?.groups).toEqual(shown?.groups);
    await port.request(plug("socket-1.a.L", "socket-1.b.L"));
    expect(listener.isAtRest).toBe(true);
  });

  it("tells one truth of a coded cable that is pulled beside another lead of its entry", async () => {
    const { listener, port, atRest } = await opened();
    await port.request(plug("socket-1.b.N", "way-1.a.L"));
    await port.request({ type: "plug-cable", entryA: wayA, entryB: wayD, code: 1 });
    await atRest();
    expect(listener.states.at(-1)?.codes).toEqual([
      { entry: wayA, code: 1 },
      { entry: wayD, code: 1 },
    ]);
    const ofCable = listener.leads!.leads.filter((each) => each.some((end) => end.startsWith("way-1.d.")));
    expect(ofCable.length).toBeGreaterThan(1);
    await port.request({ type: "pull", what: { leads: ofCable } });
    expect(listener.leads).toEqual({ leads: [lead("socket-1.b.N", "way-1.a.L")], codes: [] });
    await atRest();
    expect(listener.states.at(-1)).toMatchObject({ groups: [["socket-1.b.N", "way-1.a.L"]], codes: [] });
  });

  it("tells what a probe touches and what a lead shows", async () => {
    const { listener, port, until, atRest } = await opened();
    await atRest();
    await port.request({ type: "walk-test", on: true });
    await port.request({ type: "probe", probe: "red", at: contact("way-1.a.L") });
    await until(listener, () => listener.heard.includes("touch way-1.a.L, 203 left"));
    await port.request({ type: "probe", probe: "red", at: null });
    await port.request({ type: "plug-cable", entryA: wayA, entryB: socketA, code: 3 });
    void port.request({ type: "test-lead", entryA: wayA, entryB: socketA });
    await until(listener, () => listener.lead !== undefined);
    expect(listener.lead).toMatchObject({
      joined: [{}, {}, {}],
      open: [],
      codes: [{ code: 3 }, { code: 3 }],
    });
  });

  it("says that it is lost when its scanner dies, and comes back with what was in", async () => {
    const { clock, listener, port, opening, until, atRest, dies } = await opened();
    await atRest();
    await port.request(plug("way-1.a.L", "socket-1.a.L"));
    opening.leads = listener.leads!;
    dies();
    const unanswered = port.request(plug("way-1.a.N", "socket-1.a.N"));
    await until(listener, () => listener.heard.includes("lost scanner-stopped"));
    expect(await unanswered).toMatchObject({ ok: false, code: "no-board" });
    listener.sensedRevision = 0;
    listener.states.length = 0;
    clock.advance(500);
    await atRest();
    expect(listener.leads).toEqual(opening.leads);
    // From the first picture on: a board that is come back to is never told as one that was emptied.
    expect(listener.states.map(({ groups }) => groups.length)).not.toContain(0);
  });

  it("takes a scanner that falls silent to hang, and starts it again", async () => {
    const { clock, listener, until, atRest, hangs } = await opened();
    await atRest();
    hangs();
    clock.advance(6000);
    await until(listener, () => listener.heard.includes("lost scanner-stopped"));
    listener.states.length = 0;
    clock.advance(500);
    await atRest();
  });

  it("ends when the bench stops, and is not started again", async () => {
    const { clock, listener, port, atRest } = await opened();
    await atRest();
    await port.close();
    const { length } = listener.heard;
    clock.advance(60_000);
    await soon();
    expect(listener.heard).toHaveLength(length);
    expect(clock.waitingCount).toBe(0);
  });
});

describe("a board that cannot be opened", () => {
  it("says why, and is tried again ever less often", async () => {
    const clock = new ManualClock();
    const listener = new Listener();
    const double = new BoardDouble().on(clock);
    double.cannotOpen = new LinesError("no-rights", { path: "/sys" });
    const port = new ScannerClient({
      start: double.start,
      lines: "gpio",
      timers: clock,
      note: () => undefined,
    });
    const lostCount = async (): Promise<number> => {
      await soon();
      return listener.lostCount;
    };
    port.open(() => ({ board: shippedBoard("small") }), listener);
    expect(await lostCount()).toBe(1);
    for (const [index, waitMs] of [500, 1000, 2000, 4000, 5000, 5000].entries()) {
      clock.advance(waitMs - 1);
      expect(await lostCount()).toBe(index + 1);
      clock.advance(1);
      expect(await lostCount()).toBe(index + 2);
    }
    await port.close();
  });

  it("is said to be read, once it can be, with the kernel's interface that its pins are opened through", () => {
    const notes: string[] = [];
    let hear: (message: FromScanner) => void = () => undefined;
    const port = new ScannerClient({
      start: (heard) => {
        hear = heard.hear;
        const nothing = (): void => undefined;
        return { isOpen: true, send: nothing, close: nothing, kill: nothing, ended: new Promise(nothing) };
      },
      lines: "gpio",
      timers: new ManualClock(),
      note: (sentence) => notes.push(sentence),
    });
    port.open(() => ({ board: shippedBoard("small") }), new Listener());
    const opened = {
      type: "opened",
      lines: "gpio",
      lineCount: 24,
      hasCodes: false,
      hasProbes: false,
      leads: noLeads,
    } as const;
    hear({ ...opened, through: "character-device" });
    hear({ ...opened, through: "sysfs" });
    expect(notes).toEqual([
      expect.stringMatching(/character device \(node-libgpiod\), because sysfs cannot be had/),
      expect.stringMatching(/sysfs \(onoff\)/),
    ]);
  });

  it("is said by the scanner's own process where there are no pins", async () => {
    const listener = new Listener();
    const port = new ScannerClient({
      start: scannerProcess(childPath),
      lines: "gpio",
      timers: new ManualClock(),
      note: () => undefined,
    });
    onTestFinished(() => port.close());
    port.open(() => ({ board: shippedBoard("small") }), listener);
    await listener.next();
    expect(listener.heard[0]).toMatch(/^lost (no-sysfs-gpio|unknown-chip|no-gpio-driver)$/);
  });
});

describe("the scanner's own process", () => {
  it("holds under 50 MB while it scans the workshop board", async () => {
    const listener = new Listener();
    const port = new ScannerClient({
      start: scannerProcess(childPath),
      lines: "spinning",
      spinUs: 0.1,
      timers: new ManualClock(),
      note: () => undefined,
    });
    onTestFinished(() => port.close());
    port.open(() => ({ board: shippedBoard("workshop") }), listener);
    while (!listener.isAtRest) await listener.next();
    const [pid] = processesOf(childPath);
    const residentKb = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
    expect(Number(residentKb) / 1024).toBeGreaterThan(10);
    expect(Number(residentKb) / 1024).toBeLessThan(50);
  });
});
