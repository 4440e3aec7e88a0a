import { copyFileSync } from "node:fs";
import { join } from "node:path";
import type { Timers } from "../../../server/clock/clock.ts";
import { centreLink } from "../../../server/outbox/centre-link.ts";
import { Outbox } from "../../../server/outbox/outbox.ts";
import { LogReader } from "../../../server/store/log-reader.ts";
import { type LogSigner, openSigner } from "../../../server/store/log-signer.ts";
import { LogWriter, type NewEvent } from "../../../server/store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "../../../server/store/open-database.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import type { LogRow } from "../../../shared/protocol/log-row.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";

/** However long something waits, here it comes in the next turn: what is checked is the order, not the time. */
export const hastyTimers: Timers = {
  after: (_, run) => {
    const due = setImmediate(run);
    return () => clearImmediate(due);
  },
};

/** A bench as far as its centre sees it: a log, its key, and the outbox that sends the one under the other. */
export class BenchLog {
  readonly folder: string;
  readonly signer: LogSigner;
  readonly notes: string[] = [];
  #writing: Connection;
  #reading: Connection;
  writer: LogWriter;
  reader: LogReader;
  outbox: Outbox | undefined;

  constructor(folder = temporaryFolder()) {
    this.folder = folder;
    this.signer = openSigner(folder);
    [this.#writing, this.#reading, this.writer, this.reader] = this.#open();
  }

  get path(): string {
    return join(this.folder, "spurwise.db");
  }

  #open(): [Connection, Connection, LogWriter, LogReader] {
    const writing = openForWriting(this.path);
    const writer = new LogWriter(writing, this.path, new ManualClock(), this.signer);
    const reading = openForReading(this.path);
    const reader = new LogReader(reading);
    const boardHash = writer.keepDocument("board", Buffer.from(`board of ${this.folder}`));
    writer.append([{ attemptId: null, type: "boot", author: byBench, content: { boardHash } }]);
    return [writing, reading, writer, reader];
  }

  get rows(): LogRow[] {
    return [...this.reader.rows()];
  }

  /** So many more events of an attempt. */
  append(count: number, word = "a"): void {
    for (let at = 0; at < count; at += 1) {
      const event: NewEvent = {
        attemptId: "attempt-1",
        type: "sensed",
        author: byBench,
        content: { added: [`${word}~${at}`], removed: [] },
      };
      this.writer.append([event]);
    }
  }

  /** Leaves the file no page more, as a disk without room does; with `isFull` false there is room again. */
  fillDisk(isFull = true): void {
    const pages = isFull ? Number(this.#writing.pragma("page_count", { simple: true })) : 2 ** 30;
    this.#writing.pragma(`max_page_count = ${pages}`);
  }

  send(address: string): void {
    this.outbox = new Outbox({
      benchId: this.writer.benchId,
      logReader: this.reader,
      signer: this.signer,
      link: centreLink(address, 500),
      timers: hastyTimers,
      note: (sentence) => this.notes.push(sentence),
    });
    this.outbox.start();
  }

  /** True where the last row is at the centre, as far as the bench knows. */
  get isAllSent(): boolean {
    const last = this.reader.lastRow(this.writer.benchId);
    const sent = this.outbox?.state.sent;
    return last !== undefined && sent?.boot === last.boot && sent.sequence === last.sequence;
  }

  /** Ends as a bench does, and starts anew with the log that is there. */
  async restart(address: string): Promise<void> {
    await this.close();
    [this.#writing, this.#reading, this.writer, this.reader] = this.#open();
    this.send(address);
  }

  /** A copy of the log as it is now. */
  async keepCopy(): Promise<string> {
    this.writer.checkpoint();
    const copy = join(this.folder, "copy.db");
    copyFileSync(this.path, copy);
    return copy;
  }

  async close(): Promise<void> {
    await this.outbox?.stop();
    this.#writing.close();
    this.#reading.close();
  }
}
