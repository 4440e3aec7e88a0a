import type { BenchParts } from "../bench/bench-core.ts";
import type { EvidenceSource } from "./export.ts";

/** What the exports of a bench are made from; undefined where its own records cannot be read. */
export function evidenceSource({
  records,
  people,
  isLogDamaged,
  softwareVersion,
}: BenchParts): EvidenceSource | undefined {
  if (!records || isLogDamaged) return undefined;
  const { attempts, logReader } = records;
  const learnerOf: EvidenceSource["learnerOf"] = (id) => (id === null ? undefined : people.toldOf(id));
  return { attempts, logReader, learnerOf, softwareVersion };
}
