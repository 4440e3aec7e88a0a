import { allExports } from "../../../server/evidence/exports.ts";
import { evidenceSource } from "../../../server/evidence/evidence-source.ts";
import type { Language } from "../../../shared/text/languages.ts";
import type { TestBench } from "../test-bench.ts";

/** A file of evidence of a bench, whole: of one attempt, or of all of them. */
export async function fileOf(
  bench: TestBench,
  name: string,
  attempt = "",
  language: Language = "en",
): Promise<Buffer> {
  const source = evidenceSource(bench.bench.core);
  const made = allExports.find((one) => one.name === name);
  if (!source || !made) throw new Error(`no ${name}`);
  const asked = { language };
  const record = source.attempts.byId(attempt);
  const pieces: Uint8Array[] = [];
  const take = async (made: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>) => {
    for await (const piece of made) pieces.push(Buffer.from(piece));
  };
  if (made.of === "attempts") await take(made.pieces(source, {}, asked));
  else if (record) await take(made.pieces(source, record, asked));
  else throw new Error(`no attempt ${attempt}`);
  return Buffer.concat(pieces);
}
