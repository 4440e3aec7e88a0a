import type { BenchReport } from "../../shared/protocol/lead-view.ts";
import type { Refusal, Reply } from "../../shared/protocol/reply.ts";
import { changeOf } from "../../shared/protocol/view-change.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { done, refuse } from "../refusal.ts";
import { isSignatureOf } from "../store/log-signer.ts";
import { type Channel, openChannel } from "./channel.ts";
import type { KnownLead } from "./lead-book.ts";
import {
  fromLeadSchema,
  type FromLead,
  linkAnswerSchema,
  pairAnswerSchema,
  pairProofSchema,
  type SealedPack,
} from "./lead-messages.schema.ts";
import { isSameProof, plainCode, proofOf, saltOf, signedOfLink, agreedOf, linkText } from "./pair-code.ts";
import type { LinkEnd } from "./link-end.ts";
import type { OrderBy } from "./order-by.ts";

export type Order = Extract<FromLead, { what: "order" }>;

export interface LeadLinkParts extends LinkEnd {
  /** Puts into the log of this bench who leads it, and by whose hand. @throws StoreError */
  log: (type: "lead-joined" | "lead-left", content: object, by: OrderBy) => void;
}

/** What the bench gives to its lead and takes from it. */
export interface LedBenchEnd {
  /** How the bench is now. @throws StoreError */
  report: () => BenchReport;
  order: (order: Order) => Promise<Reply>;
  takePack: (pack: SealedPack, lead: KnownLead) => void;
  /** Nothing was heard from the lead for `lostAfterMs`. */
  lost: () => void;
}

/** A bench that has heard nothing from its lead for so long goes on by itself. */
export const lostAfterMs = 20_000;
const retryMs = { first: 1000, longest: 15_000 } as const;
/** What changes within this long is told at once: five times a second at most. */
const reportEveryMs = 200;
const hereEveryMs = 3000;

/**
 * The link of a bench to its lead: it is the bench that calls, so that nothing has to be open on it. Without the link the
 * bench does everything it does with it.
 */
export class LeadLink {
  readonly #parts: LeadLinkParts;
  #end: LedBenchEnd | undefined;
  #channel: Channel | undefined;
  #sent: BenchReport | undefined;
  #isLinked = false;
  readonly #listeners = new Set<() => void>();
  #isStopped = false;
  #failedCount = 0;
  #saidWhy: string | undefined;
  #cancelRetry: (() => void) | undefined;
  #cancelHere: (() => void) | undefined;
  #cancelLost: (() => void) | undefined;
  #cancelReport: (() => void) | undefined;

  constructor(parts: LeadLinkParts) {
    this.#parts = parts;
  }

  /** Who leads this bench, and whether it is there now. */
  get lead(): { name: string; address: string; isLinked: boolean } | null {
    const { lead } = this.#parts.book;
    return lead && { name: lead.name, address: `${lead.host}:${lead.port}`, isLinked: this.#isLinked };
  }

  /** Calls `listener` whenever who leads this bench, or whether they are there, is another. Returns what ends it. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Begins to call the lead that this bench was paired with, and goes on until `stop`. */
  start(end: LedBenchEnd): void {
    this.#end = end;
    this.#later(0);
  }

  stop(): void {
    this.#isStopped = true;
    this.#drop();
    this.#cancelLost?.();
  }

  /** Something at the bench is another: the lead is told, soon. */
  changed(): void {
    if (!this.#isLinked || this.#cancelReport) return;
    this.#cancelReport = this.#parts.timers.after(reportEveryMs, () => {
      this.#cancelReport = undefined;
      this.#report();
    });
  }

  /** Pairs this bench with the lead at an address by the code that is shown there. @throws StoreError */
  async pair(host: string, port: number, code: string, by: OrderBy): Promise<Reply> {
    const { benchId, name, signer, pins, book, log } = this.#parts;
    let channel: Channel | undefined;
    try {
      channel = await openChannel(host, port);
      channel.send({ what: "pair", benchId, benchKey: signer.publicKey, name });
      const answer = parseSafely(pairAnswerSchema, await channel.next());
      if (!answer.success) return refuse("lead-not-reached");
      if (answer.data.what === "refused") return refuse("no-pair-code");
      const { leadId, leadKey, name: leadName } = answer.data;
      const agreed = agreedOf(channel.binding, {
        benchId,
        benchKey: signer.publicKey,
        leadId,
        leadKey,
      });
      const stretched = await pins.badgeMark(plainCode(code), saltOf(agreed));
      const signature = signer.signatureOf(signedOfLink("pair", "bench", agreed));
      channel.send({ what: "proof", proof: proofOf(stretched, "bench", agreed), signature });
      const last = await channel.next();
      if (isWithoutCode(last)) return refuse("no-pair-code");
      const proof = parseSafely(pairProofSchema, last);
      const isLead =
        proof.success &&
        isSameProof(proof.data.proof, proofOf(stretched, "lead", agreed)) &&
        isSignatureOf(leadKey, signedOfLink("pair", "lead", agreed), proof.data.signature);
      if (!isLead) return refuse("wrong-pair-code");
      log("lead-joined", { lead: leadId, leadKey, name: leadName }, by);
      book.keepLead({ id: leadId, name: leadName, publicKey: leadKey, host, port });
    } catch (error) {
      return refusalOf(error);
    } finally {
      channel?.close();
    }
    this.#drop();
    this.#later(0);
    return done;
  }

  /** This bench is led by nobody from now on. @throws StoreError */
  leave(by: OrderBy): void {
    const { book, log } = this.#parts;
    if (!book.lead) return;
    log("lead-left", { lead: book.lead.id }, by);
    book.keepLead(null);
    this.#drop();
    this.#end?.lost();
  }

  #later(delayMs: number): void {
    this.#cancelRetry?.();
    if (this.#isStopped || !this.#end || !this.#parts.book.lead) return;
    this.#cancelRetry = this.#parts.timers.after(delayMs, () => void this.#call());
  }

  async #call(): Promise<void> {
    const { lead } = this.#parts.book;
    if (!lead || this.#isStopped || this.#isLinked) return;
    try {
      await this.#link(lead);
    } catch (error) {
      this.#say((error as Error).message);
      this.#later(Math.min(retryMs.longest, retryMs.first * 2 ** this.#failedCount));
      this.#failedCount += 1;
    }
  }

  async #link(lead: KnownLead): Promise<void> {
    const { benchId, signer } = this.#parts;
    const channel = await openChannel(lead.host, lead.port);
    this.#channel = channel;
    try {
      const text = linkText(channel.binding, benchId, lead.id);
      const signature = signer.signatureOf(signedOfLink("link", "bench", text));
      channel.send({ what: "link", benchId, signature });
      const answer = parseSafely(linkAnswerSchema, await channel.next());
      if (!answer.success) throw new Error("what is there is no lead");
      if (answer.data.what === "refused") throw new Error("the lead does not know this bench");
      if (!isSignatureOf(lead.publicKey, signedOfLink("link", "lead", text), answer.data.signature))
        throw new Error("another one answers at the lead's address");
      if (this.#isStopped || this.#parts.book.lead !== lead)
        throw new Error("it is not led from there any more");
    } catch (error) {
      channel.close();
      throw error;
    }
    channel.trust();
    this.#isLinked = true;
    this.#told();
    this.#failedCount = 0;
    this.#saidWhy = undefined;
    this.#cancelLost?.();
    this.#cancelLost = undefined;
    this.#sent = undefined;
    channel.listen(
      (message) => this.#hear(channel, lead, message),
      () => this.#ended(channel),
    );
    this.#here();
    this.#report();
  }

  #here(): void {
    this.#cancelHere = this.#parts.timers.after(hereEveryMs, () => {
      this.#channel?.send({ what: "here" });
      this.#here();
    });
  }

  #report(): void {
    if (!this.#isLinked || !this.#end) return;
    const report = this.#end.report();
    const before = this.#sent;
    const change = before && changeOf({ ...before, nowWallMs: 0 }, { ...report, nowWallMs: 0 });
    if (before && !change) return;
    this.#sent = report;
    const told = before && changeOf(before, report);
    this.#channel?.send(told ? { what: "change", change: told } : { what: "report", report });
  }

  #hear(channel: Channel, lead: KnownLead, message: unknown): void {
    const parsed = parseSafely(fromLeadSchema, message);
    if (!parsed.success) return channel.close();
    const said = parsed.data;
    if (said.what === "pack") this.#end?.takePack(said.pack, lead);
    if (said.what !== "order") return;
    void this.#end?.order(said).then((reply) => {
      channel.send({
        what: "reply",
        order: said.order,
        isDone: reply.ok,
        ...(reply.ok ? {} : { code: reply.code }),
      });
      this.#report();
    });
  }

  #ended(channel: Channel): void {
    if (this.#channel !== channel) return;
    this.#drop();
    this.#cancelLost = this.#parts.timers.after(lostAfterMs, () => this.#end?.lost());
    this.#later(retryMs.first);
  }

  #drop(): void {
    this.#isLinked = false;
    for (const cancel of [this.#cancelRetry, this.#cancelHere, this.#cancelReport]) cancel?.();
    this.#cancelReport = undefined;
    const channel = this.#channel;
    this.#channel = undefined;
    channel?.close();
    this.#told();
  }

  #told(): void {
    for (const listener of this.#listeners) listener();
  }

  /** For the journal: once for each reason, however often it is tried again. */
  #say(why: string): void {
    if (why !== this.#saidWhy) this.#parts.note(`lead: ${why}`);
    this.#saidWhy = why;
  }
}

/** What stands in the way of a pairing; what the disk does not take is thrown on. */
function refusalOf(error: unknown): Refusal {
  if (error instanceof Error && error.name === "StoreError") throw error;
  return refuse("lead-not-reached");
}

/** True where the lead says that its code is used up, or was meanwhile. */
function isWithoutCode(said: unknown): boolean {
  const answer = parseSafely(pairAnswerSchema, said);
  return answer.success && answer.data.what === "refused" && answer.data.why === "no-code";
}
