import { createHash } from "node:crypto";
import type { LogCursor } from "../store/log-reader.ts";
import { archiveEnd, archiveFormat } from "./archive-line.schema.ts";
import { type EvidenceSource, type Export, evidenceReaders } from "./export.ts";
import { packedDocument, packedRow } from "./packed-row.schema.ts";

const batchSize = 200;

/** All but the last line. */
function* linesOf({ logReader, benchId, softwareVersion, rulePackVersion }: EvidenceSource) {
  const head = { format: archiveFormat, benchId, softwareVersion, rulePackVersion };
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
}

/**
 * Everything a bench has on record, one JSON value a line: what it is, each document, each row of the log byte for byte
 * in its order, and last the SHA-256 of all lines before. People are in it by their opaque ids alone.
 */
export const archive: Export = {
  name: "archive.jsonl",
  mediaType: "application/jsonl",
  who: evidenceReaders,
  of: "attempts",
  isNarrowed: false,
  lineCount: ({ logReader }) => 2 + logReader.documentHashes().length + logReader.eventCount(),
  *pieces(source) {
    const hash = createHash("sha256");
    for (const piece of linesOf(source)) {
      hash.update(piece, "utf8");
      yield piece;
    }
    yield archiveEnd(hash.digest("hex"));
  },
};
