import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Actor } from "../../../server/acts/actor.ts";
import { ScenarioShelf } from "../../../server/author/scenario-shelf.ts";
import type { Timers } from "../../../server/clock/clock.ts";
import { systemTimers } from "../../../server/clock/system-clock.ts";
import { type Channel, takeChannels } from "../../../server/lead/channel.ts";
import { KeptPacks } from "../../../server/lead/kept-packs.ts";
import { LeadBook } from "../../../server/lead/lead-book.ts";
import { tieToLead } from "../../../server/lead/lead-end.ts";
import { LeadLink, type LeadLinkParts, lostAfterMs } from "../../../server/lead/lead-link.ts";
import { logOrder } from "../../../server/lead/order-by.ts";
import { PackKeeper } from "../../../server/lead/pack-keeper.ts";
import { TaskLibrary } from "../../../server/lead/task-library.ts";
import { Workshop, type WorkshopParts } from "../../../server/lead/workshop.ts";
import { PinHasher } from "../../../server/people/pin-hash.ts";
import { openSigner } from "../../../server/store/log-signer.ts";
import { writeWhole } from "../../../server/store/write-whole.ts";
import { boardFace } from "../../../server/view/board-face.ts";
import type { ActMessage, ActName } from "../../../shared/protocol/acts.ts";
import type { BenchReport } from "../../../shared/protocol/lead-view.ts";
import type { Reply } from "../../../shared/protocol/reply.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { firstSpur, TestBench, type TestBenchOptions } from "../test-bench.ts";

const pins = new PinHasher();
export const trainer: Actor = {
  kind: "trainer",
  learner: null,
  session: "s-1",
  staff: "t-1",
  isRemote: true,
};

/** A bench that can lead and be led, over real connections on this machine. */
export class LedBench {
  readonly bench: TestBench;
  readonly workshop: Workshop;
  readonly link: LeadLink;
  readonly packs: PackKeeper;
  readonly book: LeadBook;
  /** Every connection that was taken, while it leads. */
  readonly channels: Channel[] = [];

  constructor(options: TestBenchOptions = {}) {
    const folder = options.folder ?? temporaryFolder();
    const tasks = new TaskLibrary({
      kits: new Map((options.scenarios ?? [firstSpur()]).map((kit) => [kit.scenario.id, kit])),
      isRead: true,
    });
    this.bench = new TestBench({
      ...options,
      folder,
      parts: { ...options.parts, scenarios: new ScenarioShelf(tasks, undefined) },
    });
    const { parts } = this.bench;
    const { people, note } = parts;
    const { clock } = this.bench;
    const benchId = parts.records?.log.benchId ?? "";
    const signer = openSigner(folder);
    this.book = new LeadBook(folder);
    const log: WorkshopParts["log"] & LeadLinkParts["log"] = (type, content, by) => {
      if (parts.records) logOrder(parts.records.log, type, content, by);
    };
    const ends = { log, book: this.book, benchId, name: `Bench ${benchId.slice(-4)}`, signer, pins, note };
    this.packs = new PackKeeper({
      ...{ kept: new KeptPacks(folder), tasks, people, benchId, signer, note },
      keepCriteria: (text) => writeWhole(join(folder, "criteria.json"), text),
    });
    this.workshop = new Workshop({
      ...ends,
      clock,
      timers: clock,
      listen: async (taken) => {
        const server = takeChannels((channel) => {
          this.channels.push(channel);
          taken(channel);
        });
        await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
        return { server, port: (server.address() as AddressInfo).port };
      },
    });
    // What is waited for long goes by when a check lets it.
    const timers: Timers = {
      after: (delayMs, run) =>
        delayMs === lostAfterMs ? clock.after(delayMs, run) : systemTimers.after(delayMs / 10, run),
    };
    this.link = new LeadLink({ ...ends, timers });
    parts.lead = { workshop: this.workshop, link: this.link, packs: this.packs, names: undefined };
    onTestFinished(() => this.link.stop());
    onTestFinished(() => this.workshop.stop());
  }

  get id(): string {
    return this.bench.parts.records?.log.benchId ?? "";
  }

  async start(): Promise<this> {
    await this.bench.start();
    const { core } = this.bench.bench;
    const { board } = this.bench.parts;
    onTestFinished(
      tieToLead(
        { core, handle: (name, message, session) => this.bench.bench.handle(name, message, session) },
        boardFace(board, true),
        this.link,
        this.packs,
      ),
    );
    return this;
  }

  /** Takes the power of the bench away. */
  cutPower(): void {
    this.link.stop();
    this.workshop.stop();
    this.bench.cutPower();
  }

  byTrainer<Name extends ActName>(name: Name, message: ActMessage<Name>): Promise<Reply> {
    return this.bench.bench.handle(name, message, { actor: trainer });
  }

  /** What is known here of a bench. */
  reportOf(bench: LedBench): BenchReport | undefined {
    return this.workshop.benches().find(({ id }) => id === bench.id)?.report;
  }
}

/** Waits for something that comes over a connection. */
export async function until<Found>(
  look: () => Found | undefined | null | false | 0 | "",
  what = "it",
): Promise<Found> {
  for (let tried = 0; tried < 400; tried += 1) {
    const found = look();
    if (found) return found;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  throw new Error(`${what} did not come`);
}

/** A lead with benches that are paired with it. */
export async function workshopOf(
  count: number,
  options: TestBenchOptions = {},
): Promise<{ lead: LedBench; benches: LedBench[] }> {
  const lead = await new LedBench(options).start();
  await lead.byTrainer("lead-act", { what: "lead", isLeading: true });
  const benches: LedBench[] = [];
  for (let at = 0; at < count; at += 1) {
    const bench = await new LedBench().start();
    await pair(lead, bench);
    benches.push(bench);
  }
  await until(() => benches.every((bench) => lead.reportOf(bench)), "the first report of each bench");
  return { lead, benches };
}

/** Pairs a bench by the code that its lead shows. */
export async function pair(lead: LedBench, bench: LedBench): Promise<void> {
  await lead.byTrainer("lead-act", { what: "show-code" });
  const reply = await bench.byTrainer("lead-act", {
    what: "join",
    address: `127.0.0.1:${lead.workshop.port}`,
    code: lead.workshop.code?.text ?? "",
  });
  if (!reply.ok) throw new Error(`not paired: ${reply.code}`);
}
