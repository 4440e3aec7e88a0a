import { readFileSync } from "node:fs";
import { type OpenBoard, openBoard } from "../../../hardware/scan/open-board.ts";
import type { FromScanner, ToScanner } from "../../../hardware/scan/scanner-messages.ts";
import { ScannerProgram } from "../../../hardware/scan/scanner-program.ts";
import { type BoardDescription, boardSchema } from "../../../shared/board/board.schema.ts";
import type { ContactId, EntryId } from "../../../shared/board/ids.ts";
import { type SensedState, sensedStateSchema } from "../../../shared/board/sensed-state.schema.ts";

export const shippedBoard = (name: string): BoardDescription =>
  boardSchema.parse(JSON.parse(readFileSync(`hardware/boards/${name}.json`, "utf8")));

type Unnumbered<Message> = Message extends { request: number } ? Omit<Message, "request"> : never;
export const contact = (text: string): ContactId => text as ContactId;
export const entry = (text: string): EntryId => text as EntryId;

/** The scanner's program with a clock and timers that move only when a check says so. */
export class ProgramBench {
  nowMs = 1_000;
  opened: OpenBoard | undefined;
  readonly sent: FromScanner[] = [];
  readonly program: ScannerProgram;
  #due: { atMs: number; run: () => void }[] = [];
  #requestCount = 0;

  /** @param turnMs how long each turn of the program takes */
  constructor(
    open: typeof openBoard = openBoard,
    readonly turnMs = 0.1,
  ) {
    this.program = new ScannerProgram({
      send: (message) => this.sent.push(message),
      nowMs: () => this.nowMs,
      after: (delayMs, run) => {
        const timer = { atMs: this.nowMs + delayMs, run };
        this.#due.push(timer);
        return () => (this.#due = this.#due.filter((each) => each !== timer));
      },
      open: async (message, nowMs) => (this.opened = await open(message, nowMs)),
    });
  }

  async open(
    board: BoardDescription,
    more: Partial<Extract<ToScanner, { type: "open" }>> = {},
  ): Promise<this> {
    this.program.hear({ type: "open", board, lines: "simulated", ...more });
    // Opening is the one thing that waits for something else than the clock.
    while (!this.sent.some(({ type }) => type === "opened" || type === "open-failed"))
      await new Promise((resolve) => setImmediate(resolve));
    return this.run(1_000);
  }

  /** Lets time go by: one turn of the program after the other. */
  run(forMs: number): this {
    for (const endMs = this.nowMs + forMs; this.nowMs < endMs; this.nowMs += this.turnMs) {
      const due = this.#due.filter(({ atMs }) => atMs <= this.nowMs);
      this.#due = this.#due.filter(({ atMs }) => atMs > this.nowMs);
      for (const { run } of due) run();
    }
    return this;
  }

  /** Asks for something and gives the answers with its number that come within a second. */
  ask(message: Unnumbered<ToScanner>): FromScanner[] {
    const request = (this.#requestCount += 1);
    this.program.hear({ ...message, request });
    this.run(1_000);
    return this.sent.filter((each) => "request" in each && each.request === request);
  }

  states(): SensedState[] {
    return this.sent.flatMap((message) =>
      message.type === "sensed" ? [sensedStateSchema.parse(message.state)] : [],
    );
  }

  get state(): SensedState {
    const last = this.states().at(-1);
    if (last === undefined) throw new Error("nothing was sensed");
    return last;
  }
}
