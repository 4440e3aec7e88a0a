import { join } from "node:path";
import { statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isSignatureOf, openSigner, readPublicKey } from "../../../server/store/log-signer.ts";
import { LogWriter } from "../../../server/store/log-writer.ts";
import { openForWriting } from "../../../server/store/open-database.ts";
import { hashOfRow, hexOf } from "../../../server/store/row-hash.ts";
import { rowOfRecord } from "../../../server/store/row-of-record.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";

/** A log with a hand-in, sealed by the key of its folder. */
function sealedLog() {
  const folder = temporaryFolder();
  const path = join(folder, "spurwise.db");
  const signer = openSigner(folder);
  const database = openForWriting(path);
  const log = new LogWriter(database, path, new ManualClock(), signer);
  const { publicKey } = signer;
  log.append([{ attemptId: null, type: "boot", author: byBench, content: { publicKey } }]);
  const rows = log.append([{ attemptId: "a", type: "handed-in", author: byBench, content: { tryCount: 2 } }]);
  log.append([{ attemptId: null, type: "board-fault", author: byBench, content: { faults: [] } }]);
  return { folder, database, rows, publicKey, signer };
}

describe("a hand-in", () => {
  it("is sealed with the bench's own key, which only the bench's user may read and which stays the same", () => {
    const { folder, database, rows, publicKey } = sealedLog();
    expect(rows.map(({ type }) => type)).toEqual(["handed-in", "sealed"]);
    expect(verifyLog(database)).toMatchObject({ isSound: true, rowCount: 4, publicKey });
    expect(statSync(join(folder, "signing-key.pem")).mode & 0o777).toBe(0o600);
    expect(openSigner(folder).publicKey).toBe(publicKey);
    expect(readPublicKey(folder)).toBe(publicKey);
    expect(readPublicKey(temporaryFolder())).toBeUndefined();
  });

  it("that was changed is found also where somebody has made the whole chain anew, without the key", () => {
    const { database } = sealedLog();
    database.exec("DROP TRIGGER log_is_not_changed");
    const records = database.prepare("SELECT * FROM log ORDER BY boot, sequence").all();
    let previousHash: Uint8Array | undefined;
    for (const record of records) {
      const row = rowOfRecord(record);
      if (!row) throw new Error("no row");
      const told = JSON.parse(Buffer.from(row.bytes).toString("utf8")) as Record<string, unknown>;
      if (row.type === "handed-in") told["tryCount"] = 0;
      if (row.type === "sealed") told["head"] = hexOf(previousHash ?? row.previousHash);
      const changed = {
        ...row,
        bytes: Buffer.from(JSON.stringify(told)),
        previousHash: previousHash ?? row.previousHash,
      };
      previousHash = hashOfRow(changed);
      database
        .prepare("UPDATE log SET bytes = ?, previous_hash = ?, hash = ? WHERE sequence = ?")
        .run(changed.bytes, changed.previousHash, previousHash, row.sequence);
    }
    database.prepare("UPDATE log_end SET hash = ?").run(previousHash);
    expect(verifyLog(database)).toMatchObject({ isSound: false, reason: "its signature is not the bench's" });
  });

  it("has a signature that another key has not made, nor over another record", () => {
    const { signer, publicKey } = sealedLog();
    const signature = signer.signatureOf("ab");
    expect(isSignatureOf(publicKey, "ab", signature)).toBe(true);
    expect(isSignatureOf(publicKey, "ac", signature)).toBe(false);
    expect(isSignatureOf(openSigner(temporaryFolder()).publicKey, "ab", signature)).toBe(false);
    expect(isSignatureOf("rubbish", "ab", signature)).toBe(false);
  });
});
