import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfBytes } from "./event-bytes.ts";

/** A document that a row was made with: what it is, and the hash it is kept under, in hexadecimal. */
export interface NamedDocument {
  what: string;
  hash: string;
}

const keys = {
  boardHash: "board",
  scenarioHash: "scenario",
  rulePackHash: "rulePack",
  criteriaHash: "criteria",
};
const naming = new Set(["boot", "attempt-started", "decided", "second-viewed"]);

/** The content of a row, or nothing where it was hashed as something that is none. */
function contentOf({ bytes }: LogRow): Record<string, unknown> {
  try {
    const { content } = eventOfBytes(bytes);
    return typeof content === "object" && content !== null ? (content as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** The documents that a start of the bench or of an attempt, or a decision names. */
export function documentsNamedIn(row: LogRow): NamedDocument[] {
  if (!naming.has(row.type)) return [];
  const content = contentOf(row);
  return Object.entries(keys).flatMap(([key, what]) => {
    const hash = content[key];
    return typeof hash === "string" ? [{ what, hash }] : [];
  });
}
