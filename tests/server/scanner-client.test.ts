import { fileURLToPath } from "node:url";
import { describe, expect, it, onTestFinished } from "vitest";
import type { BoardListener, BoardOpening, LeadResult } from "../../server/board/scanner-port.ts";
import { ScannerClient } from "../../server/scanner-client.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import { ManualClock } from "./manual-clock.ts";
import { smallBoard } from "./small-board.ts";

const childPath = fileURLToPath(new URL("scanner-child-stand-in.mjs", import.meta.url));

/** Hears a child, in a process of its own, and lets a check wait for what it says. */
class Listener implements BoardListener {
  readonly heard: string[] = [];
  state: SensedState | undefined;
  #waiting: { word: string; resolve: () => void }[] = [];

  opened(): void {
    this.#note("opened");
  }
  lost({ code }: { code: string }): void {
    this.#note(`lost ${code}`);
  }
  sensed(state: SensedState): void {
    this.state = state;
    this.#note("sensed");
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
  leadResult({ entryA, entryB, joined, open }: LeadResult): void {
    this.#note(`lead ${entryA} ${entryB}: ${joined.length} joined, ${open.length} open`);
  }

  /** The next time a word is heard. */
  next(word: string): Promise<void> {
    return new Promise((resolve) => this.#waiting.push({ word, resolve }));
  }

  #note(word: string): void {
    this.heard.push(word);
    const met = this.#waiting.filter((waiter) => waiter.word === word);
    this.#waiting = this.#waiting.filter((waiter) => waiter.word !== word);
    for (const { resolve } of met) resolve();
  }
}

function client(lines: "simulated" | "gpio") {
  const clock = new ManualClock();
  const listener = new Listener();
  const scanner = new ScannerClient({ childPath, lines, timers: clock, note: () => undefined });
  onTestFinished(() => scanner.close());
  const opening: BoardOpening = { board: smallBoard().board };
  const open = (): void => scanner.open(() => opening, listener);
  return { clock, listener, scanner, opening, open };
}

const plug = (contactA: string) =>
  ({ type: "plug", contactA: contactA as never, contactB: "socket-1.a.L" as never }) as const;

describe("the scanner's process", () => {
  it("is started, senses, and answers each request by its number", async () => {
    const { listener, scanner, open } = client("simulated");
    const sensed = listener.next("sensed");
    open();
    await sensed;
    const answers = await Promise.all([
      scanner.request(plug("way-1.a.L")),
      scanner.request(plug("way-9.a.L")),
    ]);
    expect(answers).toEqual([
      { ok: true },
      { ok: false, code: "no-such-place", facts: { contact: "way-9.a.L" } },
    ]);
    expect(listener.state?.groups).toEqual([["way-1.a.L", "socket-1.a.L"]]);
  });

  it("tells what a probe touches and what a lead shows", async () => {
    const { listener, scanner, open } = client("simulated");
    const sensed = listener.next("sensed");
    open();
    await sensed;
    const [entryA, entryB] = ["way-1.a", "socket-1.a"] as [never, never];
    const answers = [
      await scanner.request({ type: "walk-test", on: true }),
      await scanner.request({ type: "test-lead", entryA, entryB }),
    ];
    expect(answers).toEqual([{ ok: true }, { ok: true }]);
    expect(listener.heard).toContain("touch way-1.a.L, 23 left");
    expect(listener.heard).toContain("lead way-1.a socket-1.a: 1 joined, 4 open");
  });

  it("that dies is said to be lost, its open requests are refused, and it is started again with what is in", async () => {
    const { clock, listener, scanner, opening, open } = client("simulated");
    const first = listener.next("sensed");
    open();
    await first;
    const lost = listener.next("lost scanner-stopped");
    const unanswered = scanner.request(plug("way-1.a.N"));
    const deadly = scanner.request(plug("way-1.a.E"));
    await lost;
    expect(await unanswered).toMatchObject({ ok: false, code: "no-board" });
    expect(await deadly).toMatchObject({ ok: false, code: "no-board" });
    expect(await scanner.request(plug("way-1.a.L"))).toMatchObject({ ok: false, code: "no-board" });

    opening.groups = [["way-1.a.L" as never, "socket-1.a.L" as never]];
    const again = listener.next("sensed");
    clock.advance(500);
    await again;
    expect(listener.heard).toEqual(["opened", "sensed", "lost scanner-stopped", "opened", "sensed"]);
    expect(listener.state?.groups).toEqual([["way-1.a.L", "socket-1.a.L"]]);
  });

  it("that falls silent is taken to hang and is started again", async () => {
    const { clock, listener, open } = client("simulated");
    const first = listener.next("sensed");
    open();
    await first;
    const lost = listener.next("lost scanner-stopped");
    clock.advance(6000);
    await lost;
    const again = listener.next("sensed");
    clock.advance(500);
    await again;
  });

  it("that cannot open the board says why, and is tried again ever less often", async () => {
    const { clock, listener, open } = client("gpio");
    for (const waitMs of [0, 500, 1000, 2000, 4000, 5000, 5000]) {
      const lost = listener.next("lost no-rights");
      if (waitMs === 0) open();
      clock.advance(Math.max(0, waitMs - 1));
      const before = listener.heard.length;
      clock.advance(1);
      await lost;
      expect(listener.heard.slice(before)).toEqual(["lost no-rights"]);
    }
  });

  it("ends when the bench stops, and is not started again", async () => {
    const { clock, listener, scanner, open } = client("simulated");
    const first = listener.next("sensed");
    open();
    await first;
    await scanner.close();
    clock.advance(60_000);
    expect(listener.heard).toEqual(["opened", "sensed"]);
    expect(clock.waitingCount).toBe(0);
  });
});
