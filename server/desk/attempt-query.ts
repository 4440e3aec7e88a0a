import { z } from "zod";
import { modes } from "../../shared/protocol/attempt-words.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { AttemptFilter } from "../store/attempt-reader.ts";

const id = z.string().min(1).max(64);

/** What narrows a list of attempts, as it stands in an address; all of it may be left out. */
const querySchema = z.strictObject({
  learner: id.optional(),
  scenario: id.optional(),
  mode: z.enum(modes).optional(),
  status: z.enum(["open", "ready", "handed-in", "left"]).optional(),
});

/** The list that an address asks for; undefined where it asks for none. */
export function readAttemptFilter(query: unknown): AttemptFilter | undefined {
  const parsed = parseSafely(querySchema, query);
  return parsed.success ? (parsed.data as AttemptFilter) : undefined;
}
