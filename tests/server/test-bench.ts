import { readFileSync } from "node:fs";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { linesSentence } from "../../hardware/lines/lines-sentence.ts";
import { ScenarioShelf } from "../../server/author/scenario-shelf.ts";
import { Bench } from "../../server/bench/bench.ts";
import type { BenchParts, Records } from "../../server/bench/bench-core.ts";
import { demoCriteria } from "../../server/demo/criteria.ts";
import { demoPeople } from "../../server/demo/people.ts";
import { type ScenarioKit, scenarioKit } from "../../server/library.ts";
import { GuessGuard } from "../../server/people/guess-guard.ts";
import { GuessMemory } from "../../server/people/guess-memory.ts";
import { openPeople } from "../../server/people/open-people.ts";
import { People } from "../../server/people/people.ts";
import { PinHasher } from "../../server/people/pin-hash.ts";
import { AttemptReader } from "../../server/store/attempt-reader.ts";
import { eventOfBytes } from "../../server/store/event-bytes.ts";
import { BenchMemoryReader, BenchMemoryWriter } from "../../server/store/bench-memory.ts";
import { KeptScenarios } from "../../server/store/kept-scenarios.ts";
import { LogReader } from "../../server/store/log-reader.ts";
import { openSigner } from "../../server/store/log-signer.ts";
import { LogWriter } from "../../server/store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "../../server/store/open-database.ts";
import { WebSessions } from "../../server/web/web-sessions.ts";
import { boardFace } from "../../server/view/board-face.ts";
import { benchToShow } from "../../server/view/bench-to-show.ts";
import { scenarioCards } from "../../server/view/scenario-cards.ts";
import { viewFor } from "../../server/view/view-for.ts";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { conductorId, contactId, type ConductorId, type EntryId, type Role } from "../../shared/board/ids.ts";
import type { Author } from "../../shared/protocol/author.ts";
import type { AttemptView, BenchView } from "../../shared/protocol/bench-view.ts";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { judge } from "../../shared/rules/judge.ts";
import { packVersion } from "../../shared/rules/pack-version.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import { BoardDouble, soon } from "./board/board-double.ts";
import { ManualClock } from "./manual-clock.ts";
import { smallBoard } from "./small-board.ts";
import { temporaryFolder } from "./temporary-folder.ts";

/** The scenario of the small board, changed where a check needs it otherwise. */
export function firstSpur(change: Partial<Scenario> = {}): ScenarioKit {
  const file = JSON.parse(readFileSync("scenarios/first-spur.json", "utf8")) as object;
  const kit = scenarioKit(Buffer.from(JSON.stringify({ ...file, ...change })), "first-spur.json");
  if ("problems" in kit) throw new Error(JSON.stringify(kit.problems));
  return kit;
}

export interface TestBenchOptions {
  /** Where the log lies; the same folder again is the same bench after a restart. */
  folder?: string;
  scenarios?: ScenarioKit[];
  isSimulated?: boolean;
  findings?: "asked" | "live";
  clock?: ManualClock;
  /** Codes of the plugs; none where left out. */
  codes?: BoardDescription["codes"];
  port?: BoardDouble;
  parts?: Partial<BenchParts>;
  /** True: it seals what is handed in and decided, as a bench does. */
  isSealing?: boolean;
  /** False: a bench whose people are to be set up. */
  hasDemo?: boolean;
}

/** A bench of the real parts, on a board in this process and with time that a check lets go by. */
export class TestBench {
  readonly folder: string;
  readonly clock: ManualClock;
  readonly port: BoardDouble;
  readonly parts: BenchParts;
  bench: Bench;
  readonly notes: string[] = [];
  readonly writing: Connection;
  readonly #reading: Connection;
  #isStopped = false;

  constructor(options: TestBenchOptions = {}) {
    this.folder = options.folder ?? temporaryFolder();
    this.clock = options.clock ?? new ManualClock();
    this.port = (options.port ?? new BoardDouble()).on(this.clock);
    const path = join(this.folder, "spurwise.db");
    this.writing = openForWriting(path);
    const signer = options.isSealing ? openSigner(this.folder) : undefined;
    const log = new LogWriter(this.writing, path, this.clock, signer);
    this.#reading = openForReading(path);
    const records: Records = {
      log,
      logReader: new LogReader(this.#reading),
      attempts: new AttemptReader(this.#reading),
      memory: new BenchMemoryWriter(this.writing, path),
      memoryReader: new BenchMemoryReader(this.#reading),
      ownScenarios: new KeptScenarios(this.writing, path),
    };
    const people = new People({
      store: openPeople(this.folder, this.writing, this.#reading, log, this.clock),
      demo: options.hasDemo === false ? [] : demoPeople,
      pins: new PinHasher(),
      guard: new GuessGuard(() => this.clock.monotonicMs(), new GuessMemory(this.#reading, this.writing)),
    });
    const kits = options.scenarios ?? [firstSpur()];
    const { board, bytes } = smallBoard(options.codes);
    this.parts = {
      board,
      boardBytes: bytes,
      isSimulated: options.isSimulated ?? true,
      scenarios: new ScenarioShelf(
        { kits: new Map(kits.map((kit) => [kit.scenario.id, kit])), isRead: true },
        records,
      ),
      port: this.port,
      clock: this.clock,
      timers: this.clock,
      judge,
      rulePackVersion: packVersion,
      softwareVersion: "0.0.0-test",
      findings: options.findings ?? "asked",
      records,
      criteria: demoCriteria,
      people,
      webSessions: new WebSessions(people, () => this.clock.monotonicMs()),
      isNetworkOpen: false,
      note: (sentence) => void this.notes.push(sentence),
      noBoardSentence: linesSentence,
      ...options.parts,
    };
    this.bench = new Bench(this.parts);
    onTestFinished(() => this.stop());
  }

  /** Starts it, as the program does once it listens, and waits until the board is at rest. */
  async start(): Promise<this> {
    this.bench.start();
    await soon();
    this.atRest();
    return this;
  }

  /** Lets time go by until the scanner says that the board is at rest. */
  atRest(): void {
    this.clock.advance(500);
  }

  /** Stops it as a signal does; once. */
  async stop(): Promise<void> {
    if (this.#isStopped) return;
    this.#isStopped = true;
    await this.bench.stop();
    this.#reading.close();
    this.writing.close();
  }

  /** Takes the power away: nothing is flushed, nothing is said. */
  cutPower(): void {
    this.#isStopped = true;
    this.#reading.close();
    this.writing.close();
  }

  /** Sends a command and expects it to be done. */
  async does<Name extends ActName>(name: Name, command: ActMessage<Name>): Promise<void> {
    // A learner takes longer to reach for the next key than a board to come to rest.
    if (name === "ask-verdict" || name === "ready" || name === "hand-in") this.atRest();
    const answer = await this.bench.handle(name, command, this.bench.core.session);
    // All that can be sensed at once is; the pins of a cable make contact one after the other.
    this.clock.advance(name === "plug-cable" ? 100 : 0);
    if (!answer.ok) throw new Error(`${name} was refused: ${answer.code} ${JSON.stringify(answer.facts)}`);
  }

  /** Sends a command and gives the code it is refused with; "done" where it is not. */
  async refusal<Name extends ActName>(name: Name, command: ActMessage<Name>): Promise<string> {
    const answer = await this.bench.handle(name, command, this.bench.core.session);
    this.clock.advance(0);
    return answer.ok ? "done" : answer.code;
  }

  view(): BenchView {
    const { board, scenarios, isSimulated } = this.parts;
    const shown = benchToShow(
      this.bench.core,
      boardFace(board, isSimulated),
      scenarioCards(scenarios.kits, board),
    );
    return viewFor("bench", shown);
  }

  /** The attempt on the screen; there must be one. */
  attempt(): AttemptView {
    const { attempt } = this.view();
    if (!attempt) throw new Error("no attempt on the screen");
    return attempt;
  }

  rows(): LogRow[] {
    return [...(this.parts.records?.logReader.rows() ?? [])];
  }

  /** The events of the log by type, their content read. */
  events(type?: string): { type: string; author: Author | undefined; content: Record<string, unknown> }[] {
    return this.rows()
      .filter((row) => type === undefined || row.type === type)
      .map(({ type: name, bytes }) => ({
        type: name,
        ...(eventOfBytes(bytes) as { author: Author | undefined; content: Record<string, unknown> }),
      }));
  }

  /** Signs in, starts the scenario and goes to the wiring. */
  async isWiring(mode: "practice" | "assessed" = "practice", scenario = "first-spur"): Promise<this> {
    await this.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    await this.does("start-attempt", { scenario, mode });
    await this.does("accept-caution", {});
    await this.does("go-to-step", { step: "wire" });
    return this;
  }

  /** A whole cable of twin-and-earth. */
  async cable(from: string, to: string, csaMm2?: number): Promise<void> {
    const size = csaMm2 === undefined ? {} : { csaMm2 };
    await this.does("plug-cable", { entryA: from as EntryId, entryB: to as EntryId, ...size });
  }
}

/** A lead by its two ends, as `socket-1.a` L to `socket-2.b` L. */
export const lead = (from: string, to: string, role: Role, toRole: Role = role): ConductorId =>
  conductorId(contactId(from, role), contactId(to, toRole));

/** The leads of a whole cable. */
export const leadsOf = (from: string, to: string): ConductorId[] =>
  (["L", "N", "E"] as const).map((role) => lead(from, to, role));

/** The right wiring of the first spur: a ring of two with one spur. */
export const rightCables: [from: string, to: string][] = [
  ["way-1.a", "socket-1.a"],
  ["socket-1.b", "socket-2.a"],
  ["socket-2.b", "way-1.b"],
  ["socket-1.c", "socket-3.a"],
];
