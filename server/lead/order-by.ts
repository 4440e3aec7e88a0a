import type { ActorRole } from "../../shared/protocol/author.ts";
import type { EventType } from "../../shared/protocol/log-row.ts";
import { type Actor, authorOf } from "../acts/actor.ts";
import type { LogWriter } from "../store/log-writer.ts";

/** Who gives an order: their part, their id and their session, at the bench where they give it. */
export interface OrderBy {
  role: ActorRole;
  person: string;
  session: string | null;
}

export const orderedBy = (actor: Actor): OrderBy => ({
  role: authorOf(actor).by,
  person: actor.staff ?? "?",
  session: actor.session,
});

/** Puts into a log what was done by somebody's hand. @throws StoreError */
export function logOrder(
  log: Pick<LogWriter, "append">,
  type: EventType,
  content: object,
  { role, person, session }: OrderBy,
): void {
  const author = { by: role, session };
  log.append([{ attemptId: null, type, author, content: { ...content, person } }]);
}
