import { boardLines } from "../../../hardware/lines/board-lines.ts";
import { SimulatedBoard } from "../../../hardware/lines/simulated-board.ts";
import type { LineFault, SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import type { ChainCheck } from "../../../hardware/health/chain-check.ts";
import type { LinesError } from "../../../hardware/lines/lines.ts";
import { ScannerProgram } from "../../../hardware/scan/scanner-program.ts";
import type { ScannerChannel, StartScanner } from "../../../server/board/scanner-channel.ts";
import type {
  BoardListener,
  BoardOpening,
  BoardPort,
  BoardRequest,
} from "../../../server/board/scanner-port.ts";
import type { FromScanner, ToScanner } from "../../../hardware/scan/scanner-messages.ts";
import { ScannerClient } from "../../../server/scanner-client.ts";
import { type BoardLeads, noLeads } from "../../../shared/board/board-leads.ts";
import { type ConductorId, type ContactId, endsOfConductor } from "../../../shared/board/ids.ts";
import type { Clock, Timers } from "../../../server/clock/clock.ts";
import { ManualClock } from "../manual-clock.ts";

const asSent = <Message>(message: Message): Message => JSON.parse(JSON.stringify(message)) as Message;

/**
 * The one double of the board: the scanner's own program on the simulated lines, in this process, with time that
 * a check lets go by. Hands, faults and ends of the scanner are as they would be; nothing is made up.
 */
export class BoardDouble implements BoardPort {
  /** What the bench asked of it. */
  readonly requests: BoardRequest[] = [];
  /** How long each exchange with the lines takes. */
  exchangeMs = 0;
  /** What the loop of a chain says of itself. */
  chain: ChainCheck = { kind: "sound" };
  /** Why the board cannot be opened; undefined where it can. */
  cannotOpen: LinesError | undefined;
  lines: SimulatedLines | undefined;
  #clock: Clock & Timers & Pick<ManualClock, "advance"> = new ManualClock();
  #client: ScannerClient | undefined;
  #program: ScannerProgram | undefined;
  #simulated: SimulatedBoard | undefined;
  #end: (how: string) => void = () => undefined;
  /** What hands put in before the bench started, where the board is a real one. */
  #found: BoardLeads = noLeads;
  readonly #broken = new Map<ContactId, LineFault>();

  /** Lets it go by the clock of a bench. */
  on(clock: ManualClock): this {
    this.#clock = clock;
    return this;
  }

  open(opening: () => BoardOpening, listener: BoardListener): void {
    const note = (): void => undefined;
    this.#client = new ScannerClient({ start: this.start, lines: "simulated", timers: this.#clock, note });
    this.#client.open(() => ({ leads: this.#found, ...opening() }), listener);
  }

  request(request: BoardRequest): Promise<Awaited<ReturnType<BoardPort["request"]>>> {
    this.requests.push(request);
    const answer = this.#client!.request(request);
    this.#clock.advance(0);
    return answer;
  }

  attended(): void {
    this.#client!.attended();
  }

  async close(): Promise<void> {
    await this.#client?.close();
  }

  /** Starts the program in this process, as the child's process would be. */
  readonly start: StartScanner = ({ hear }) => {
    let isOpen = true;
    const send = (message: FromScanner): void => {
      if (isOpen) hear(asSent(message));
    };
    const program = new ScannerProgram({
      send,
      nowMs: () => this.#clock.monotonicMs(),
      after: (delayMs, run) => this.#clock.after(delayMs + this.exchangeMs, run),
      open: async ({ board, leads, faults }) => {
        if (this.cannotOpen) throw this.cannotOpen;
        const simulated = new SimulatedBoard(board);
        if (leads) simulated.restore(leads);
        for (const { contact, fault } of faults ?? []) simulated.setFault(contact, fault);
        for (const [contact, fault] of this.#broken) simulated.setFault(contact, fault);
        this.#simulated = simulated;
        this.lines = simulated.lines;
        this.#contacts = [...boardLines(board).lineOf.keys()];
        return { lines: simulated.lines, simulated, chainCheck: () => this.chain };
      },
    });
    this.#program = program;
    const ended = new Promise<string>((resolve) => {
      this.#end = (how) => {
        isOpen = false;
        program.close();
        resolve(how);
      };
    });
    const channel: ScannerChannel = {
      get isOpen() {
        return isOpen;
      },
      send: (message: ToScanner) => {
        if (isOpen) program.hear(asSent(message));
      },
      close: () => this.#end("0"),
      kill: () => this.#end("SIGKILL"),
      ended,
    };
    return channel;
  };
  #contacts: ContactId[] = [];

  /** A hand puts leads in or takes them out; sensed at once. */
  byHand(change: { in?: readonly ConductorId[]; out?: readonly ConductorId[] }): void {
    const pairs = (leads: readonly ConductorId[] = []): BoardLeads["leads"] =>
      leads.map((lead) => endsOfConductor(lead));
    if (this.#program === undefined) {
      this.#found = { leads: [...this.#found.leads, ...pairs(change.in)], codes: [] };
      return;
    }
    const request = 0;
    if (change.out) this.#program.hear({ type: "pull", request, what: { leads: pairs(change.out) } });
    for (const [contactA, contactB] of pairs(change.in))
      this.#program.hear({ type: "plug", request, contactA, contactB });
    this.#clock.advance(0);
  }

  /** What is in. */
  get leads(): BoardLeads {
    return this.#simulated?.leads ?? noLeads;
  }

  /** A contact breaks, or with `null` is mended. */
  breaks(contact: ContactId, fault: LineFault | null): void {
    if (fault) this.#broken.set(contact, fault);
    else this.#broken.delete(contact);
    this.#program?.hear({ type: "set-fault", request: 0, contact, fault });
    this.#clock.advance(0);
  }

  /** The chain is cut: no line answers. With `false` it is whole again. */
  cutsChain(isCut = true): void {
    this.chain = isCut ? { kind: "open-chain", inputChipCount: 1 } : { kind: "sound" };
    for (const contact of this.#contacts) this.#simulated?.setFault(contact, isCut ? "stuck-high" : null);
    this.#clock.advance(4000);
  }

  /** A hand puts a probe on a contact, on the other probe or away. */
  touches(at: ContactId | "other-probe" | null, probe: "red" | "black" = "red"): void {
    this.#program?.hear({ type: "probe", request: 0, probe, at });
    this.#clock.advance(0);
  }

  /** The scanner hangs: it scans no more and says nothing. */
  hangs(): void {
    this.#program?.close();
  }

  /** The scanner ends; it is started again half a second later. */
  async dies(): Promise<void> {
    this.#end("SIGSEGV");
    await soon();
  }
}

/** Lets what is under way in this process be done, where it waits for no clock. */
export const soon = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
