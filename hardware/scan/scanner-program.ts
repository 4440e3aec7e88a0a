import { noLeads } from "../../shared/board/board-leads.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import { boardFaults } from "../lines/board-faults.ts";
import { type BoardLines, boardLines } from "../lines/board-lines.ts";
import { ChainWatch } from "./chain-watch.ts";
import { type ByHand, doByHand } from "./do-by-hand.ts";
import { doubtedBoard } from "./doubted-board.ts";
import { selfCheckFaults } from "./self-check-faults.ts";
import { DoubtfulLeads } from "../health/doubtful-leads.ts";
import { leadTest } from "../health/lead-test.ts";
import { LinesError } from "../lines/lines.ts";
import type { OpenBoard, openBoard } from "./open-board.ts";
import { Scanner, type ScannerEvent } from "./scanner.ts";
import type { FromScanner, ToScanner } from "./scanner-messages.ts";
import { sensedBoard, type SensedBoard, untellableBoard } from "./sensed-board.ts";
import type { Hindrance } from "../lines/simulated-board.ts";
import { WalkTest } from "../health/walk-test.ts";

/** What the program runs on: a line to the server, a clock, timers, and a way to open boards. */
export interface ProgramParts {
  send: (message: FromScanner) => void;
  nowMs: () => number;
  /** Runs something later, or as soon as messages have been heard (0); gives what calls it off. */
  after: (delayMs: number, run: () => void) => () => void;
  open: typeof openBoard;
}

type Asked<Type extends ToScanner["type"]> = Extract<ToScanner, { type: Type }>;
type Request = Exclude<ToScanner, { type: "open" | "close" | "attended" }>;

const noPins = { landedCount: 0, nextMs: Infinity };
const aliveEveryMs = 1_000;
/** A simulated board says when it changes, so that its watch may be slow; only its loose contacts go unsaid. */
const simulatedPauseMs = 10;
const exchangesToLearn = 16;
/** A board where no lead was seen to go in may have so many pairs for another reason: tied outputs. */
const mostTiedGroups = 3;

/** The scanner child without its process: opens a board, keeps scanning it, and answers the server. */
export class ScannerProgram {
  readonly #parts: ProgramParts;
  #board: BoardLines | undefined;
  #opened: OpenBoard | undefined;
  #scanner: Scanner | undefined;
  #activePauseMs: number | undefined;
  #isClosed = false;
  #waiting: Request[] = [];
  #callOff: () => void = () => undefined;

  #sensed: SensedBoard | undefined;
  #revision = 0;
  /** Hands moved something: the next state is told even where it shows nothing else. */
  #isStateAwaited = false;
  #firstGroups: ReadonlySet<string> = new Set();
  /** Of a real board only: on a simulated one hands say what they do. */
  #doubtful: DoubtfulLeads | undefined;
  #aliveMs = Number.NEGATIVE_INFINITY;
  #chain = new ChainWatch(undefined);
  #selfCheck: number | undefined;
  #walkTest: WalkTest | undefined;
  #leadTests: Asked<"test-lead">[] = [];

  constructor(parts: ProgramParts) {
    this.#parts = parts;
  }

  hear(message: ToScanner): void {
    if (message.type === "close") this.close();
    else if (message.type === "open") void this.#open(message);
    else if (message.type === "attended") this.#doubtful?.touch(this.#parts.nowMs());
    else if (this.#scanner === undefined) this.#waiting.push(message);
    else this.#answer(message);
  }

  /** Releases every line and pin. Safe to call twice. */
  close(): void {
    this.#isClosed = true;
    this.#callOff();
    this.#opened?.lines.close();
    this.#opened = undefined;
  }

  async #open(message: Asked<"open">): Promise<void> {
    try {
      const stopSaying = this.#sayOpening();
      const opened = await this.#parts.open(message, this.#parts.nowMs).finally(stopSaying);
      if (this.#isClosed) {
        opened.lines.close();
        return;
      }
      this.#opened = opened;
      const board = boardLines(message.board);
      this.#board = board;
      if (opened.simulated === undefined) this.#doubtful = new DoubtfulLeads(board);
      this.#parts.send({
        type: "opened",
        lines: message.lines,
        ...(opened.through === undefined ? {} : { through: opened.through }),
        lineCount: board.lineCount,
        hasCodes: board.codeCount > 0,
        hasProbes: board.probes !== undefined,
        leads: opened.simulated?.leads ?? noLeads,
      });
      this.#activePauseMs = message.lines === "simulated" ? simulatedPauseMs : undefined;
      this.#scanner = this.#newScanner(opened);
      this.#chain = new ChainWatch(opened.chainCheck);
      this.#checkChain();
      this.#waiting.splice(0).forEach((request) => this.#answer(request));
      this.#turnSoon(0);
    } catch (error) {
      this.#fail(error);
    }
  }

  /** Pins that are slow to be had are no sign that the scanner hangs. */
  #sayOpening(): () => void {
    let callOff = (): void => undefined;
    const say = (): void => {
      this.#parts.send({ type: "alive", patternCount: 0, monotonicMs: this.#parts.nowMs() });
      callOff = this.#parts.after(aliveEveryMs, say);
    };
    callOff = this.#parts.after(aliveEveryMs, say);
    return () => callOff();
  }

  #newScanner({ lines, largestGroup }: OpenBoard): Scanner {
    const { probes } = this.#board!;
    return new Scanner(lines, {
      activePauseMs: this.#activePauseMs,
      probes: probes === undefined ? [] : [probes.red, probes.black],
      largestGroup,
    });
  }

  /** A pin that fails or a board that cannot be had is told; anything else is a fault of the program. */
  #fail(error: unknown): void {
    if (!(error instanceof LinesError)) throw error;
    this.close();
    this.#parts.send({ type: "open-failed", code: error.code, facts: error.facts });
  }

  #turnSoon(delayMs: number): void {
    this.#callOff();
    if (!this.#isClosed) this.#callOff = this.#parts.after(delayMs, () => this.#turn());
  }

  #turn(): void {
    const nowMs = this.#parts.nowMs();
    try {
      if (nowMs - this.#aliveMs >= aliveEveryMs) {
        this.#aliveMs = nowMs;
        this.#parts.send({ type: "alive", patternCount: this.#scanner!.patternCount, monotonicMs: nowMs });
      }
      this.#turnSoon(this.#chain.isBroken ? this.#waitForChain(nowMs) : this.#scan(nowMs));
    } catch (error) {
      this.#fail(error);
    }
  }

  #scan(nowMs: number): number {
    const { landedCount, nextMs } = this.#opened!.simulated?.advance(nowMs) ?? noPins;
    if (landedCount > 0) this.#scanner!.hurry(nowMs);
    this.#checkChainInWork(nowMs);
    if (this.#chain.isBroken) return 0;
    const { events, waitMs } = this.#scanner!.step(nowMs);
    const tookMs = this.#parts.nowMs() - nowMs;
    const { exchangeMs } = this.#scanner!;
    // One exchange that was held up by something else is soon forgotten.
    this.#scanner!.exchangeMs = exchangeMs + (tookMs - exchangeMs) / exchangesToLearn;
    for (const event of events) this.#tell(event);
    return Math.min(waitMs, Math.max(0, nextMs - nowMs));
  }

  /** While the chain cannot be read nothing is told of it but why. */
  #waitForChain(nowMs: number): number {
    if (!this.#chain.isDueAgain(nowMs)) return aliveEveryMs;
    this.#checkChain();
    if (!this.#chain.isBroken) this.#scanner = this.#newScanner(this.#opened!);
    return 0;
  }

  /** A word goes round the loop now and then, where that ever came back, at a moment when nothing is pulled. */
  #checkChainInWork(nowMs: number): void {
    if (!this.#chain.isDueInWork(nowMs)) return;
    if (this.#scanner!.isReleased) this.#checkChain();
    else this.#scanner!.letGo();
  }

  #checkChain(): void {
    this.#chain.check(this.#parts.nowMs());
    if (this.#chain.isBroken) this.#tellSensed(untellableBoard(this.#board!, [...this.#chain.faults]));
  }

  #tell(event: ScannerEvent): void {
    switch (event.type) {
      case "self-check-progress":
        if (this.#selfCheck !== undefined) this.#parts.send({ ...event, request: this.#selfCheck });
        return;
      case "self-check-result":
        if (this.#selfCheck === undefined) return;
        this.#parts.send({
          type: "self-check-result",
          request: this.#selfCheck,
          faults: selfCheckFaults(this.#board!, event, this.#chain.isWordLost),
        });
        this.#selfCheck = undefined;
        return;
      case "sensed": {
        const sensed = this.#withDoubts(sensedBoard(this.#board!, event.sensed), event.sensed.sensedAtMs);
        if (this.#sensed === undefined) this.#firstGroups = new Set(sensed.groups.map(String));
        const isMute = boardFaults(this.#board!, event.sensed.health)[0]?.kind === "no-board";
        if (isMute && this.#chain.isDueAgain(this.#parts.nowMs())) this.#checkChain();
        if (!this.#chain.isBroken) this.#tellSensed(sensed, event.sensed.sensedAtMs);
      }
    }
  }

  #withDoubts(sensed: SensedBoard, nowMs: number): SensedBoard {
    if (this.#doubtful === undefined || sensed.faults.some(({ kind }) => kind === "noisy-board"))
      return sensed;
    if (JSON.stringify(sensed.probes) !== JSON.stringify(this.#sensed?.probes ?? sensed.probes))
      this.#doubtful.touch(nowMs);
    return doubtedBoard(sensed, this.#doubtful, nowMs);
  }

  #tellSensed(sensed: SensedBoard, sensedAtMs = this.#parts.nowMs()): void {
    if (!this.#isStateAwaited && JSON.stringify(sensed) === JSON.stringify(this.#sensed)) return;
    this.#sensed = sensed;
    this.#isStateAwaited = false;
    this.#revision += 1;
    const state: SensedState = { ...sensed, revision: this.#revision, monotonicMs: sensedAtMs };
    this.#parts.send({ type: "sensed", state });
    for (const touch of this.#walkTest?.touches(sensed.probes) ?? [])
      this.#parts.send({ type: "walk-test-touch", ...touch });
    if (sensed.isSettled) for (const test of this.#leadTests.splice(0)) this.#testLead(test);
  }

  #answer(request: Request): void {
    switch (request.type) {
      case "self-check":
        this.#startSelfCheck(request);
        return;
      case "walk-test":
        this.#walkTest = request.on ? new WalkTest(this.#board!.lineOf.keys()) : undefined;
        this.#parts.send({ type: "done", request: request.request });
        return;
      case "test-lead":
        this.#startLeadTest(request);
        return;
      default:
        this.#doByHand(request);
    }
  }

  /**
   * Hands do something on the simulated board. The answer names what is in now; from then on no state counts that
   * was sensed before, and the next one at rest has seen two rounds of the watch.
   */
  #doByHand(request: ByHand): void {
    const { simulated } = this.#opened ?? {};
    if (simulated === undefined) {
      this.#refuse(request.request, { code: "not-on-a-real-board", facts: {} });
      return;
    }
    const nowMs = this.#parts.nowMs();
    const before = JSON.stringify(simulated.leads);
    const hindrance = doByHand(simulated, request, nowMs);
    this.#scanner!.hurry(nowMs);
    this.#turnSoon(0);
    if (hindrance !== undefined) {
      this.#refuse(request.request, hindrance);
      return;
    }
    const { leads } = simulated;
    this.#isStateAwaited ||= JSON.stringify(leads) !== before;
    const sensedRevision = this.#isStateAwaited ? this.#revision + 1 : this.#revision;
    this.#parts.send({ type: "done", request: request.request, moved: { leads, sensedRevision } });
  }

  #refuse(request: number, hindrance: NonNullable<Hindrance>): void {
    this.#parts.send({ type: "refused", request, ...hindrance });
  }

  #startSelfCheck({ request, areLeadsOut = false }: Asked<"self-check">): void {
    if (this.#chain.isBroken) {
      this.#parts.send({ type: "self-check-result", request, faults: [...this.#chain.faults] });
      return;
    }
    const groups = this.#sensed?.groups ?? [];
    const isSaidEmpty = areLeadsOut && this.#opened?.simulated === undefined;
    const isEmpty = isSaidEmpty || this.#isEmpty(groups.map(String));
    if (!isEmpty || this.#selfCheck !== undefined) {
      this.#refuse(request, { code: "board-not-empty", facts: { contacts: groups.flat().join(", ") } });
      return;
    }
    this.#selfCheck = request;
    this.#scanner!.startSelfCheck();
    this.#turnSoon(0);
  }

  /** No lead is known to be in: what reads as joined since the start may be outputs that are tied. */
  #isEmpty(groups: readonly string[]): boolean {
    const { simulated } = this.#opened ?? {};
    if (simulated !== undefined) return simulated.leads.leads.length === 0;
    return groups.length <= mostTiedGroups && groups.every((group) => this.#firstGroups.has(group));
  }

  #startLeadTest(test: Asked<"test-lead">): void {
    const entries = new Set(this.#board!.entries.map(({ entry }) => entry));
    const unknown = [test.entryA, test.entryB].find((entry) => !entries.has(entry));
    if (unknown !== undefined)
      this.#refuse(test.request, { code: "no-such-entry", facts: { entry: unknown } });
    else if (this.#sensed?.isSettled === true && !this.#isStateAwaited) this.#testLead(test);
    else this.#leadTests.push(test);
  }

  #testLead({ request, entryA, entryB }: Asked<"test-lead">): void {
    const result = leadTest(this.#board!, this.#sensed!, entryA, entryB);
    this.#parts.send({ type: "lead-result", request, ...result });
  }
}
