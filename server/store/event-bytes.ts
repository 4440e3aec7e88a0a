import { z } from "zod";
import { actorRoles, type Author } from "../../shared/protocol/author.ts";

const authorSchema = z.object({ by: z.enum(actorRoles), session: z.string().nullable() });

/** An event's content as the log holds it: its JSON, with who did it under `author` beside what was done. */
export const bytesOfEvent = (content: object, author: Author): Uint8Array =>
  Buffer.from(JSON.stringify({ ...content, author }), "utf8");

/**
 * What the bytes of a row tell, the author apart from the content. Rows from before authors were kept have none.
 *
 * @throws SyntaxError where the bytes are no JSON.
 */
export function eventOfBytes(bytes: Uint8Array): { content: unknown; author: Author | undefined } {
  const told: unknown = JSON.parse(Buffer.from(bytes).toString("utf8"));
  if (typeof told !== "object" || told === null) return { content: told, author: undefined };
  const { author, ...content } = told as { author?: unknown };
  return { content, author: authorSchema.safeParse(author).data };
}
