import type { LogCursor } from "../store/log-reader.ts";
import { type Export, evidenceReaders } from "./export.ts";
import { packedDocument, packedRow } from "./packed-row.schema.ts";

const batchSize = 200;

/**
 * Everything a bench has on record, one JSON value a line: what it is, each document, each row of the log byte for byte
 * in its order. People are in it by their opaque ids alone.
 */
export const archive: Export = {
  name: "archive.jsonl",
  mediaType: "application/jsonl",
  who: evidenceReaders,
  of: "attempts",
  isNarrowed: false,
  lineCount: ({ logReader }) => 1 + logReader.documentHashes().length + logReader.eventCount(),
  *pieces({ logReader, benchId, softwareVersion, rulePackVersion }) {
    const head = { format: "spurwise-archive-1", benchId, softwareVersion, rulePackVersion };
    yield `${JSON.stringify(head)}\n`;
    for (const hash of logReader.documentHashes()) {
      const bytes = logReader.document(hash);
      if (bytes) yield `${JSON.stringify({ document: packedDocument(hash, bytes) })}\n`;
    }
    // In batches: a reader that stays open would keep everybody else from the log.
    let cursor: LogCursor | undefined;
    for (;;) {
      const rows = logReader.rowsAfter(cursor, batchSize);
      yield rows.map((row) => `${JSON.stringify({ row: packedRow(row) })}\n`).join("");
      cursor = rows.at(-1);
      if (rows.length < batchSize) return;
    }
  },
};
