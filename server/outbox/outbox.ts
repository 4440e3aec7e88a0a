import type { LogRow } from "../../shared/protocol/log-row.ts";
import type { Timers } from "../clock/clock.ts";
import { Repeating } from "../clock/repeating.ts";
import {
  batchLimits,
  type Head,
  type Place,
  signedOf,
  type Taken,
} from "../centre/centre-messages.schema.ts";
import { packedDocument, packedRow } from "../evidence/packed-row.schema.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { LogSigner } from "../store/log-signer.ts";
import { hashOfBytes, hexOf } from "../store/row-hash.ts";
import type { CentreLink } from "./centre-link.ts";

export interface OutboxParts {
  benchId: string;
  logReader: Pick<LogReader, "rowsAfter" | "rowAt" | "lastRow" | "document">;
  signer: Pick<LogSigner, "signatureOf">;
  link: CentreLink;
  timers: Timers;
  note: (sentence: string) => void;
}

/** How the outbox stands. `sent`: how far the log is at the centre; `trouble`: why nothing more goes there now. */
export interface OutboxState {
  sent: Place | null;
  trouble?: { why: "not-reached" | "set-aside" | Extract<Taken, { what: "refused" }>["why"]; at?: Place };
}

/** A batch before it is packed. */
interface ToSend {
  after: Place | null;
  rows: readonly LogRow[];
}

/** The log is looked at so often; what comes in between waits that long at most. */
const lookEveryMs = 2000;
const firstRetryMs = 1000;
const longestRetryMs = 300_000;
/** Rows of one batch hold so many bytes at most: base64 makes a third more of them. */
const rowBytes = batchLimits.bytes / 4;

/** As many rows as go into one batch; one at least, however long it is. */
function cut(rows: readonly LogRow[]): readonly LogRow[] {
  let bytes = 0;
  const end = rows.findIndex((row, at) => {
    bytes += row.bytes.length + 400;
    return at > 0 && bytes > rowBytes;
  });
  return end < 0 ? rows : rows.slice(0, end);
}

/**
 * Sends the log of a bench to its centre, batch by batch, from where the centre has it. The log itself is the outbox:
 * nothing is marked as sent, and after a restart the centre says how far it is.
 */
export class Outbox {
  readonly #parts: OutboxParts;
  #sent: Place | null = null;
  /** False until the centre has said how far the log is there. */
  #isHeadKnown = false;
  /** The log at the centre is another than this one: what is here last is shown to it, and it keeps that beside. */
  #isOther = false;
  #wanted: readonly string[] = [];
  #trouble: OutboxState["trouble"];
  readonly #loop: Repeating;

  constructor(parts: OutboxParts) {
    this.#parts = parts;
    this.#loop = new Repeating({
      timers: parts.timers,
      go: () => this.#go(),
      failed: ({ message }) => this.#say({ why: "not-reached" }, `the centre is not reached (${message})`),
      firstRetryMs,
      longestRetryMs,
    });
  }

  get state(): OutboxState {
    return { sent: this.#sent, ...(this.#trouble ? { trouble: this.#trouble } : {}) };
  }

  start(): void {
    this.#loop.start();
  }

  /** Starts nothing more, and waits for the batch that is on its way. */
  stop(): Promise<void> {
    return this.#loop.stop();
  }

  async #go(): Promise<number> {
    const { next, isFull } = this.#next();
    if (!next) return lookEveryMs;
    if (!this.#hear(await this.#send(next))) return longestRetryMs;
    return isFull ? 0 : lookEveryMs;
  }

  /** What goes next; nothing where all is there. `isFull`: there may be more right behind it. */
  #next(): { next?: ToSend; isFull: boolean } {
    const { logReader, benchId } = this.#parts;
    if (!this.#isHeadKnown || this.#wanted.length > 0)
      return { next: { after: this.#sent, rows: [] }, isFull: true };
    if (this.#isOther) {
      const last = logReader.lastRow(benchId);
      return { next: { after: this.#sent, rows: last ? [last] : [] }, isFull: false };
    }
    const found = logReader.rowsAfter(this.#sent ? { benchId, ...this.#sent } : undefined, batchLimits.rows);
    const rows = cut(found.filter((row) => row.benchId === benchId));
    if (rows.length === 0) return { isFull: false };
    const isFull = rows.length === batchLimits.rows || rows.length < found.length;
    return { next: { after: this.#sent, rows }, isFull };
  }

  #send({ after, rows }: ToSend): Promise<Taken> {
    const { signer, link, logReader, benchId } = this.#parts;
    const documents = this.#wanted.flatMap((hash) => {
      const bytes = logReader.document(hash);
      return bytes ? [packedDocument(hash, bytes)] : [];
    });
    const body = Buffer.from(JSON.stringify({ benchId, after, rows: rows.map(packedRow), documents }));
    return link(body, signer.signatureOf(signedOf(hexOf(hashOfBytes(body)))));
  }

  /** Takes in what became of a batch; true where it goes on. */
  #hear(taken: Taken): boolean {
    this.#wanted = taken.what === "wants" ? taken.hashes : [];
    switch (taken.what) {
      case "taken":
      case "gap":
        this.#goOnFrom(taken.head);
        return true;
      case "wants":
        return true;
      case "set-aside":
        this.#say(
          { why: "set-aside", at: taken.at },
          `the centre has another log of this bench at boot ${taken.at.boot}, event ${taken.at.sequence}: what this one has there was kept beside`,
        );
        return false;
      case "refused":
        this.#say(
          { why: taken.why, ...(taken.at ? { at: taken.at } : {}) },
          `the centre takes no log of this bench (${taken.why})`,
        );
        return false;
    }
  }

  /** A bench that was restored from a back-up, or copied, has not what the centre has: it does not go on behind it. */
  #goOnFrom(head: Head | null): void {
    const { logReader, benchId, note } = this.#parts;
    const own = head ? logReader.rowAt({ benchId, boot: head.boot, sequence: head.sequence }) : undefined;
    this.#isOther = head !== null && (!own || hexOf(own.hash) !== head.hash);
    this.#isHeadKnown = true;
    this.#sent = head && { boot: head.boot, sequence: head.sequence };
    if (this.#isOther) return;
    if (this.#trouble) note("the centre takes the log again");
    this.#trouble = undefined;
  }

  /** For the journal: once for each reason, however often it is tried again. */
  #say(trouble: NonNullable<OutboxState["trouble"]>, sentence: string): void {
    if (this.#trouble?.why !== trouble.why) this.#parts.note(sentence);
    this.#trouble = trouble;
  }
}
