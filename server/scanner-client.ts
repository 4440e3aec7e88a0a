import type { ScannerChannel, StartScanner } from "./board/scanner-channel.ts";
import type { BoardListener, BoardOpening, BoardPort, BoardRequest } from "./board/scanner-port.ts";
import type { Timers } from "./clock/clock.ts";
import type { FromScanner, LinesKind, SimulatedFault } from "../hardware/scan/scanner-messages.ts";
import { done, refuse } from "./refusal.ts";
import type { Reply } from "../shared/protocol/reply.ts";

export interface ScannerClientOptions {
  start: StartScanner;
  lines: LinesKind;
  /** Microseconds a GPIO call of the `spinning` stand-in takes. */
  spinUs?: number | undefined;
  /** What is broken on the simulated board, for checks of the bench itself. */
  faults?: readonly SimulatedFault[];
  timers: Timers;
  /** Called with each sign of life: the scan loop turns, or a board that cannot be had is tried again. */
  alive?: () => void;
  /** Says what happens to the child, for the log of the program. */
  note: (sentence: string) => void;
}

const firstRetryMs = 500;
const longestRetryMs = 5000;
/** The child says that it is alive once a second; silent for this long it is taken to hang. */
const silentMs = 6000;
const closingMs = 2000;

const saidThrough = {
  sysfs: "the mock board is read through the pins of sysfs (onoff)",
  "character-device":
    "the mock board is read through the kernel's character device (node-libgpiod), because sysfs cannot be had",
} as const;

const refusalOf = {
  "not-on-a-real-board": "real-board",
  "no-such-contact": "no-such-place",
  "no-such-entry": "no-such-place",
  "unknown-code": "unknown-code",
  "board-not-empty": "board-not-empty",
} as const;

/**
 * The board as its scanner tells it. When the scanner dies, hangs or cannot open the board, that is said and it is started again, ever less often up to every
 * five seconds; what is in by then on the simulated board is handed to the new one.
 */
export class ScannerClient implements BoardPort {
  readonly #options: ScannerClientOptions;
  readonly #waiting = new Map<number, { request: BoardRequest; resolve: (answer: Reply) => void }>();
  #child: ScannerChannel | undefined;
  #listener: BoardListener | undefined;
  #opening: (() => BoardOpening) | undefined;
  #requestCount = 0;
  #retryMs = firstRetryMs;
  #cancelRetry: () => void = () => undefined;
  #cancelWatch: () => void = () => undefined;
  #isClosing = false;

  constructor(options: ScannerClientOptions) {
    this.#options = options;
  }

  open(opening: () => BoardOpening, listener: BoardListener): void {
    this.#opening = opening;
    this.#listener = listener;
    this.#start();
  }

  request(request: BoardRequest): Promise<Reply> {
    const child = this.#child;
    if (!child?.isOpen) return Promise.resolve(refuse("no-board"));
    this.#requestCount += 1;
    const number = this.#requestCount;
    return new Promise((resolve) => {
      this.#waiting.set(number, { request, resolve });
      child.send({ ...request, request: number });
    });
  }

  attended(): void {
    if (this.#child?.isOpen) this.#child.send({ type: "attended" });
  }

  async close(): Promise<void> {
    this.#isClosing = true;
    this.#cancelRetry();
    this.#cancelWatch();
    const child = this.#child;
    if (!child) return;
    child.close();
    const cancel = this.#options.timers.after(closingMs, () => child.kill());
    await child.ended;
    cancel();
  }

  #start(): void {
    const opening = this.#opening;
    if (!opening || this.#isClosing) return;
    const { start, lines, spinUs, faults, note } = this.#options;
    const child = start({ hear: (message) => this.#hear(child, message), note });
    this.#child = child;
    void child.ended.then((how) => this.#ended(child, how));
    child.send({
      type: "open",
      ...opening(),
      lines,
      ...(spinUs === undefined ? {} : { spinUs }),
      ...(faults && faults.length > 0 ? { faults: [...faults] } : {}),
    });
    this.#watch(child);
  }

  #watch(child: ScannerChannel): void {
    this.#cancelWatch();
    this.#cancelWatch = this.#options.timers.after(silentMs, () => {
      this.#options.note("scanner: it has been silent for too long and is stopped");
      child.kill();
    });
  }

  #hear(child: ScannerChannel, message: FromScanner): void {
    if (child !== this.#child || this.#isClosing) return;
    this.#watch(child);
    if (message.type === "alive" || message.type === "open-failed") this.#options.alive?.();
    switch (message.type) {
      case "opened":
        this.#retryMs = firstRetryMs;
        if (message.through !== undefined) this.#options.note(saidThrough[message.through]);
        this.#listener?.opened(message);
        return;
      case "open-failed":
        this.#cancelWatch();
        this.#giveUp({ code: message.code, facts: message.facts });
        child.close();
        return;
      case "sensed":
        this.#listener?.sensed(message.state);
        return;
      case "self-check-progress":
        this.#listener?.selfCheckProgress(message.doneCount, message.totalCount);
        return;
      case "self-check-result":
        this.#listener?.selfCheckResult(message.faults);
        this.#answer(message.request, done);
        return;
      case "done":
        if (message.moved) this.#listener?.moved(message.moved);
        this.#answer(message.request, done);
        return;
      case "refused":
        this.#answer(message.request, refuse(refusalOf[message.code], message.facts));
        return;
      case "walk-test-touch":
        this.#listener?.walkTestTouch(message.contact, message.leftCount);
        return;
      case "lead-result":
        this.#hearLead(message);
        return;
      case "alive":
        return;
    }
  }

  #hearLead({ request, joined, open, codes }: Extract<FromScanner, { type: "lead-result" }>): void {
    const asked = this.#waiting.get(request)?.request;
    if (asked?.type === "test-lead")
      this.#listener?.leadResult({ entryA: asked.entryA, entryB: asked.entryB, joined, open, codes });
    this.#answer(request, done);
  }

  #answer(request: number, answer: Reply): void {
    this.#waiting.get(request)?.resolve(answer);
    this.#waiting.delete(request);
  }

  #ended(child: ScannerChannel, how: string): void {
    if (child !== this.#child || this.#isClosing) return;
    this.#options.note(`scanner: it ended (${how}) and is started again`);
    this.#giveUp({ code: "scanner-stopped", facts: {} });
  }

  /** Says that the board is lost and starts anew after a while. */
  #giveUp(why: { code: string; facts: Record<string, string | number> }): void {
    this.#child = undefined;
    this.#cancelWatch();
    for (const { resolve } of this.#waiting.values()) resolve(refuse("no-board"));
    this.#waiting.clear();
    this.#listener?.lost(why);
    this.#cancelRetry();
    this.#cancelRetry = this.#options.timers.after(this.#retryMs, () => this.#start());
    this.#retryMs = Math.min(longestRetryMs, this.#retryMs * 2);
  }
}
