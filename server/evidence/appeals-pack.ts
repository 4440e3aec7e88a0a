import { eventOfBytes } from "../store/event-bytes.ts";
import { type Export, evidenceReaders } from "./export.ts";
import { packFormat } from "./appeals-pack.schema.ts";
import { packedDocument, packedRow } from "./packed-row.schema.ts";

/** The documents that rows name: the scenario, the board and the criteria. */
function documentHashes(contents: readonly unknown[]): string[] {
  const keys = ["scenarioHash", "boardHash", "criteriaHash"];
  const named = contents.flatMap((content) =>
    Object.entries(content as Record<string, unknown>).flatMap(([key, value]) =>
      keys.includes(key) && typeof value === "string" ? [value] : [],
    ),
  );
  return [...new Set(named)];
}

/**
 * One attempt in a file that is judged again away from the bench with `npm run judge`: its rows of the log byte for byte,
 * the scenario, the board and the criteria as they were, and the key its seals are proved with.
 */
export const appealsPack: Export = {
  name: "appeals-pack.json",
  mediaType: "application/json",
  who: evidenceReaders,
  of: "attempt",
  *pieces({ logReader, softwareVersion }, { attemptId, benchId }) {
    const rows = logReader.rowsWithSeals(attemptId);
    const boot = logReader.lastOfType("boot", benchId);
    const { publicKey = null } = (boot ? eventOfBytes(boot.bytes).content : {}) as { publicKey?: string };
    const head = {
      format: packFormat,
      judgedAgainBy: "npm run judge -- appeals-pack.json",
      softwareVersion,
      attemptId,
      publicKey,
    };
    yield `${JSON.stringify(head).slice(0, -1)},\n"documents":[`;
    let between = "\n";
    for (const hash of documentHashes(rows.map(({ bytes }) => eventOfBytes(bytes).content))) {
      const bytes = logReader.document(hash);
      if (!bytes) continue;
      yield between + JSON.stringify(packedDocument(hash, bytes));
      between = ",\n";
    }
    yield '\n],\n"rows":[';
    between = "\n";
    for (const row of rows) {
      yield between + JSON.stringify(packedRow(row));
      between = ",\n";
    }
    yield "\n]}\n";
  },
};
