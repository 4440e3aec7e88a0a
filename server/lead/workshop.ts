import type { Server } from "node:tls";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { BenchReport, LedBench } from "../../shared/protocol/lead-view.ts";
import type { Reply } from "../../shared/protocol/reply.ts";
import { changed, type ViewChange } from "../../shared/protocol/view-change.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Clock } from "../clock/clock.ts";
import { refuse } from "../refusal.ts";
import { isSignatureOf } from "../store/log-signer.ts";
import { BenchOrders } from "./bench-orders.ts";
import type { Channel } from "./channel.ts";
import type { OrderBy } from "./order-by.ts";
import {
  firstOfBenchSchema,
  type FromLead,
  fromBenchSchema,
  type OrderAct,
  type SealedPack,
} from "./lead-messages.schema.ts";
import { linkText, signedOfLink } from "./pair-code.ts";
import { ShownCode } from "./shown-code.ts";
import { takeBench, type TakingEnd } from "./take-bench.ts";

const hereEveryMs = 3000;

export interface WorkshopParts extends TakingEnd {
  clock: Clock;
  /** Listens for benches; gives the port. It is done when the workshop is led from here. */
  listen: (taken: (channel: Channel) => void) => Promise<{ server: Server; port: number }>;
}

interface Linked {
  channel: Channel;
  report: BenchReport | undefined;
  clockBehindMs: number;
}

/**
 * A workshop as its lead knows it: the benches that were paired with it, how each is, and what the trainer has them do. It
 * keeps nothing of their work; what a bench does is in the bench's own log.
 */
export class Workshop {
  readonly #parts: WorkshopParts;
  readonly #linked = new Map<string, Linked>();
  readonly #last = new Map<string, Pick<Linked, "report" | "clockBehindMs">>();
  readonly #listeners = new Set<() => void>();
  readonly #code: ShownCode;
  readonly #orders: BenchOrders;
  #frozen: { isFrozen: boolean; by: OrderBy } | undefined;
  #projected: string | null = null;
  #pack: { version: number; sealed: SealedPack } | undefined;
  #server: Server | undefined;
  #port: number | undefined;
  #cancelHere: (() => void) | undefined;

  constructor(parts: WorkshopParts) {
    this.#parts = parts;
    this.#code = new ShownCode(parts.clock, parts.timers, () => this.#changed());
    this.#orders = new BenchOrders(parts.timers, () => this.#changed());
  }

  get name(): string {
    return this.#parts.name;
  }

  get isLeading(): boolean {
    return this.#server !== undefined;
  }

  /** Where it listens; undefined where the workshop is not led from here. */
  get port(): number | undefined {
    return this.#port;
  }

  /** The address it listens at; undefined where the workshop is not led from here. */
  get host(): string | undefined {
    const listening = this.#server?.address();
    return typeof listening === "object" ? listening?.address : undefined;
  }

  get isFrozen(): boolean {
    return this.#frozen?.isFrozen === true;
  }

  get projected(): string | null {
    return this.#projected;
  }

  get code(): { text: string; endsWallMs: number } | undefined {
    const { shown } = this.#code;
    return shown && { text: shown.text, endsWallMs: shown.endsWallMs };
  }

  /** Every bench that was paired, by name. */
  benches(): LedBench[] {
    return this.#parts.book.benches
      .map(({ id, name }): LedBench => {
        const linked = this.#linked.get(id);
        const { report, clockBehindMs } = linked ?? this.#last.get(id) ?? { clockBehindMs: 0 };
        const refused = this.#orders.refusedBy(id);
        return {
          ...{ id, name, isLinked: linked !== undefined, clockBehindMs },
          ...(report ? { report } : {}),
          ...(refused === undefined ? {} : { refused }),
        };
      })
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  /** Calls `listener` whenever there is something new to show. Returns what ends it. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Leads the workshop from here where it was chosen before. */
  async start(): Promise<void> {
    if (!this.#parts.book.isLeading || this.#server) return;
    const { server, port } = await this.#parts.listen((channel) => void this.#meet(channel));
    this.#server = server;
    this.#port = port;
    this.#here();
    this.#changed();
  }

  /** Ends every link; benches go on by themselves. */
  stop(): void {
    this.#cancelHere?.();
    for (const { channel } of this.#linked.values()) channel.close();
    this.#server?.close();
    this.#server = undefined;
    this.#port = undefined;
  }

  /** Leads from here from now on, or no longer. @throws StoreError */
  async lead(isLeading: boolean): Promise<void> {
    this.#parts.book.keepLeading(isLeading);
    if (isLeading) return this.start();
    this.#frozen = undefined;
    this.#code.end();
    this.stop();
    this.#changed();
  }

  /** Shows a new code for the next bench; the one before ends. */
  showCode(by: OrderBy): void {
    this.#code.showNew(by);
  }

  /** @throws StoreError */
  forget(benchId: string, by: OrderBy): void {
    if (!this.#parts.book.benches.some(({ id }) => id === benchId)) return;
    this.#parts.log("bench-forgotten", { bench: benchId }, by);
    this.#parts.book.forgetBench(benchId);
    this.#linked.get(benchId)?.channel.close();
    this.#last.delete(benchId);
    if (this.#projected === benchId) this.#projected = null;
    this.#changed();
  }

  /** False where there is no such bench, or its picture is for nobody else: assessed work. */
  project(benchId: string | null): boolean {
    const shown = benchId === null ? undefined : this.#linked.get(benchId)?.report;
    if (benchId !== null && (!shown?.picture || shown.work?.mode === "assessed")) return false;
    this.#projected = benchId;
    this.#changed();
    return true;
  }

  /** Sends a pack to all that are linked, and to each that links later and has an older one. */
  sendPack(version: number, sealed: SealedPack): void {
    this.#pack = { version, sealed };
    for (const linked of this.#linked.values()) this.#givePack(linked);
    this.#changed();
  }

  /** Has one bench do something; it answers itself. */
  order<Act extends OrderAct>(
    benchId: string,
    act: Act,
    message: ActMessage<Act>,
    by: OrderBy,
  ): Promise<Reply> {
    const linked = this.#linked.get(benchId);
    if (!linked) return Promise.resolve(refuse("bench-not-linked"));
    return this.#orders.give(benchId, { act, message, by }, (message) => this.#say(linked, message));
  }

  /** Has every bench that is linked do something; a refusal where not all of them did. */
  async orderAll<Act extends OrderAct>(act: Act, message: ActMessage<Act>, by: OrderBy): Promise<Reply> {
    const replies = await Promise.all(
      [...this.#linked.keys()].map((benchId) => this.order(benchId, act, message, by)),
    );
    const doneCount = replies.filter(({ ok }) => ok).length;
    return doneCount === replies.length
      ? { ok: true }
      : refuse("not-all-benches", { doneCount, count: replies.length });
  }

  /** Freezes every bench, those that link later too, or lets them go on. */
  freeze(isFrozen: boolean, by: OrderBy): Promise<Reply> {
    this.#frozen = { isFrozen, by };
    this.#changed();
    return this.orderAll("freeze-bench", { isFrozen }, by);
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }

  #say({ channel }: Linked, message: FromLead): void {
    channel.send(message);
  }

  #here(): void {
    this.#cancelHere = this.#parts.timers.after(hereEveryMs, () => {
      for (const linked of this.#linked.values()) this.#say(linked, { what: "here" });
      this.#here();
    });
  }

  #givePack(linked: Linked): void {
    const { report } = linked;
    if (!this.#pack || !report) return;
    const known = Math.max(report.packVersion, report.waitingPackVersion ?? 0);
    if (known < this.#pack.version) this.#say(linked, { what: "pack", pack: this.#pack.sealed });
  }

  async #meet(channel: Channel): Promise<void> {
    try {
      const first = parseSafely(firstOfBenchSchema, await channel.next());
      if (!first.success) return channel.close();
      if (first.data.what === "pair") await takeBench(channel, first.data, this.#parts, this.#code);
      else this.#link(channel, first.data.benchId, first.data.signature);
    } catch {
      channel.close();
    }
  }

  /** A bench that was paired shows that it is the one, and the lead shows itself to it. */
  #link(channel: Channel, benchId: string, signature: string): void {
    const { book, signer } = this.#parts;
    const known = book.benches.find(({ id }) => id === benchId);
    const text = linkText(channel.binding, benchId, this.#parts.benchId);
    if (!known || !isSignatureOf(known.publicKey, signedOfLink("link", "bench", text), signature))
      return channel.end({ what: "refused", why: "unknown-bench" });
    channel.trust();
    channel.send({ what: "linked", signature: signer.signatureOf(signedOfLink("link", "lead", text)) });
    this.#linked.get(benchId)?.channel.close();
    const linked: Linked = { channel, report: undefined, clockBehindMs: 0 };
    this.#linked.set(benchId, linked);
    channel.listen(
      (message) => this.#hear(benchId, linked, message),
      () => {
        if (this.#linked.get(benchId) !== linked) return;
        this.#linked.delete(benchId);
        if (this.#projected === benchId) this.#projected = null;
        this.#changed();
      },
    );
  }

  #hear(benchId: string, linked: Linked, message: unknown): void {
    const parsed = parseSafely(fromBenchSchema, message);
    if (!parsed.success) return linked.channel.close();
    const said = parsed.data;
    switch (said.what) {
      case "report":
      case "change": {
        const isFirst = linked.report === undefined;
        if (said.what === "change" && isFirst) return linked.channel.close();
        try {
          // A bench that was paired is one of ours; what its page cannot draw is said there.
          linked.report = (
            said.what === "report"
              ? said.report
              : changed(linked.report, said.change as unknown as ViewChange)
          ) as BenchReport;
        } catch {
          return linked.channel.close();
        }
        linked.clockBehindMs = this.#parts.clock.wallMs() - Number(linked.report.nowWallMs);
        this.#last.set(benchId, linked);
        if (isFirst) this.#greet(benchId, linked);
        if (this.#projected === benchId && !linked.report.picture) this.#projected = null;
        if (this.#projected === benchId && linked.report.work?.mode === "assessed") this.#projected = null;
        return this.#changed();
      }
      case "reply":
        return this.#orders.take(said);
      case "here":
        return undefined;
    }
  }

  /** A bench that comes, or comes back, is told how the others are held, and gets the pack it has not. */
  #greet(benchId: string, linked: Linked): void {
    this.#givePack(linked);
    const wish = this.#frozen;
    if (wish && linked.report?.isFrozen !== wish.isFrozen)
      void this.order(benchId, "freeze-bench", { isFrozen: wish.isFrozen }, wish.by);
  }
}
