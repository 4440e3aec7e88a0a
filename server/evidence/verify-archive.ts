import { createHash } from "node:crypto";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { ChainProof, nameOfRow } from "../store/chain-proof.ts";
import { hashOfBytes, hexOf } from "../store/row-hash.ts";
import { type ArchiveLine, archiveLineSchema } from "./archive-line.schema.ts";

/** What a check of an archive came to. `firstBad` names the first thing in it that is not as it was written. */
export type ArchiveProof =
  | { isSound: true; rowCount: number; documentCount: number }
  | { isSound: false; firstBad: string; reason: string };

function lineOf(text: string): ArchiveLine | undefined {
  try {
    const parsed = parseSafely(archiveLineSchema, JSON.parse(text));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Proves an archive of a bench line by line, as the log itself is proved: each record against the one before it, each
 * seal, each document against its hash, and at last the file as a whole. One that was cut off is not sound.
 */
export async function verifyArchive(lines: AsyncIterable<string> | Iterable<string>): Promise<ArchiveProof> {
  const bad = (firstBad: string, reason: string): ArchiveProof => ({ isSound: false, firstBad, reason });
  const documents = new Set<string>();
  const chain = new ChainProof((hash) => documents.has(hash));
  const whole = createHash("sha256");
  let [lineCount, rowCount] = [0, 0];
  let isEnded = false;
  for await (const text of lines) {
    lineCount += 1;
    const line = isEnded ? undefined : lineOf(text);
    const name = `line ${lineCount}`;
    if (!line || "format" in line !== (lineCount === 1)) return bad(name, "it is no such line of an archive");
    if ("sha256" in line) {
      if (line.sha256 !== whole.digest("hex"))
        return bad("the file", "as a whole it is not what was written");
      isEnded = true;
      continue;
    }
    whole.update(`${text}\n`, "utf8");
    if ("document" in line) {
      const { hash, bytes } = line.document;
      if (hexOf(hashOfBytes(bytes)) !== hash)
        return bad(`document ${hash}`, "its content is not what was written");
      documents.add(hash);
    } else if ("row" in line) {
      const { benchId, boot, sequence } = line.row;
      const fault = chain.fault(line.row);
      if (fault) return bad(nameOfRow(benchId, boot, sequence), fault);
      rowCount += 1;
    }
  }
  if (!isEnded) return bad(`what follows line ${lineCount}`, "the file is cut off there");
  return { isSound: true, rowCount, documentCount: documents.size };
}
