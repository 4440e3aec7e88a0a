import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { byId, conductorId, type ConductorId, type ContactId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import type {
  BoardListener,
  BoardOpening,
  BoardPort,
  BoardRequest,
} from "../../server/board/scanner-port.ts";
import { type Leads, leadsAfter } from "../../server/board/simulated-leads.ts";
import { done, type Refusal } from "../../server/refusal.ts";
import { groupsOf } from "../../shared/wiring/plugged.ts";

/**
 * A mock board in this process, in place of the scanner child: it senses at once what it is asked to plug, or
 * what a hand plugs. What the child does by itself is proved with the real one elsewhere.
 */
export class BoardStandIn implements BoardPort {
  leads: Leads = new Map();
  requests: BoardRequest[] = [];
  #board: BoardDescription | undefined;
  #listener: BoardListener | undefined;
  #revision = 0;
  #extra: Partial<SensedState> = {};
  /** What its next self-check finds. */
  foundBySelfCheck: BoardFault[] = [];
  /** While false, sensed states say that a plug may be half in. */
  isSettled = true;

  open(opening: () => BoardOpening, listener: BoardListener): void {
    const { board, groups, codes } = opening();
    this.#board = board;
    this.#listener = listener;
    const codeOf = (contact: ContactId) => codes?.find(({ entry }) => contact.startsWith(`${entry}.`))?.code;
    const known = new Map((groups ?? []).map(([a, b]) => [conductorId(a!, b!), codeOf(a!)] as const));
    if (known.size > 0) this.leads = known;
    listener.opened({ hasCodes: (board.codes?.length ?? 0) > 0, hasProbes: board.probes !== undefined });
    this.#say();
  }

  async request(request: BoardRequest): Promise<{ ok: true } | Refusal> {
    this.requests.push(request);
    if (this.#board) this.leads = leadsAfter(this.leads, request, this.#board);
    if (request.type === "self-check") {
      this.#listener?.selfCheckProgress(12, 24);
      this.#listener?.selfCheckProgress(24, 24);
      this.#listener?.selfCheckResult(this.foundBySelfCheck);
    }
    if (request.type === "test-lead") this.#testLead(request);
    this.#say();
    return done;
  }

  #testLead({ entryA, entryB }: Extract<BoardRequest, { type: "test-lead" }>): void {
    const isAt = (entry: string) => (contact: string) => contact.startsWith(`${entry}.`);
    const joined = [...this.leads.keys()]
      .map((lead) => lead.split("~") as [ContactId, ContactId])
      .filter((ends) => ends.some(isAt(entryA)) && ends.some(isAt(entryB)))
      .map((ends) => (isAt(entryA)(ends[0]) ? ends : (ends.toReversed() as [ContactId, ContactId])));
    const open = [entryA, entryB]
      .flatMap((entry) => ["L", "N", "E"].map((role) => `${entry}.${role}` as ContactId))
      .filter((contact) => !joined.flat().includes(contact));
    const codeOf = (entry: string) =>
      [...this.leads].find(([lead]) => lead.split("~").some(isAt(entry)))?.[1];
    const codes = [entryA, entryB].flatMap((entry) => {
      const code = codeOf(entry);
      return code === undefined ? [] : [{ entry, code }];
    });
    this.#listener?.leadResult({ entryA, entryB, joined, open, codes });
  }

  /** A probe is put on a contact during a walk along the board. */
  touches(contact: string, leftCount: number): void {
    this.#listener?.walkTestTouch(contact as ContactId, leftCount);
  }

  async close(): Promise<void> {
    this.#listener = undefined;
  }

  /** A hand puts leads in or takes them out. */
  byHand(change: { in?: ConductorId[]; out?: ConductorId[] }): void {
    const leads = new Map(this.leads);
    for (const lead of change.out ?? []) leads.delete(lead);
    for (const lead of change.in ?? []) leads.set(lead, undefined);
    this.leads = leads;
    this.#say();
  }

  /** The board senses something else besides, such as a fault. */
  senses(extra: Partial<SensedState>): void {
    this.#extra = { ...this.#extra, ...extra };
    this.#say();
  }

  /** Whatever else it sensed is over. */
  mend(): void {
    this.#extra = {};
    this.#say();
  }

  /** The scanner stops. */
  dies(code = "scanner-stopped"): void {
    this.#listener?.lost({ code, facts: {} });
  }

  /** The scanner is back. */
  comesBack(): void {
    this.#listener?.opened({ hasCodes: false, hasProbes: false });
    this.#say();
  }

  #say(): void {
    this.#revision += 1;
    const codes = [...this.leads]
      .flatMap(([lead, code]) => (code === undefined ? [] : [{ lead, code }]))
      .flatMap(({ lead, code }) => lead.split("~").map((contact) => ({ contact, code })))
      .map(({ contact, code }) => ({ entry: contact.slice(0, contact.lastIndexOf(".")) as never, code }));
    this.#listener?.sensed({
      boardId: this.#board?.id ?? "",
      revision: this.#revision,
      monotonicMs: 0,
      groups: groupsOf([...this.leads.keys()].sort(byId)),
      codes: [...new Map(codes.map((one) => [one.entry, one])).values()],
      unknown: [],
      probes: { red: null, black: null },
      faults: [],
      isSettled: this.isSettled,
      ...this.#extra,
    });
  }
}
