import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfBytes } from "../store/event-bytes.ts";
import { hexOf } from "../store/row-hash.ts";
import { type Export, evidenceReaders } from "./export.ts";

/** A row as it is read outside the bench: what happened, who did it, when, and the hashes that chain it. */
function eventOf(row: LogRow): object {
  const { content, author } = eventOfBytes(row.bytes);
  return {
    benchId: row.benchId,
    boot: row.boot,
    sequence: row.sequence,
    type: row.type,
    content,
    author: author ?? null,
    wallTime: new Date(row.wallMs).toISOString(),
    monotonicMs: row.monotonicMs,
    clockState: row.clockState,
    previousHash: hexOf(row.previousHash),
    hash: hexOf(row.hash),
  };
}

/** One attempt with all that the log has of it, in the order in which it happened. */
export const attemptJson: Export = {
  name: "attempt.json",
  mediaType: "application/json",
  who: evidenceReaders,
  of: "attempt",
  *pieces({ logReader, learnerOf, softwareVersion }, record) {
    const learner = learnerOf(record.learner) ?? null;
    const head = { format: "spurwise-attempt-1", softwareVersion, learner, attempt: record };
    yield `${JSON.stringify(head).slice(0, -1)},"events":[`;
    let between = "\n";
    for (const row of logReader.rowsWithSeals(record.attemptId)) {
      yield between + JSON.stringify(eventOf(row));
      between = ",\n";
    }
    yield "\n]}\n";
  },
};
