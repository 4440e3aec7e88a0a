import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { contactId, type ContactId, entryId, frontId, type Role } from "../../shared/board/ids.ts";

/** Every contact of a board, test faces included: all that a walk with a probe has to touch. */
export const contactsOf = ({ stations }: BoardDescription): ContactId[] =>
  stations.flatMap(({ id, entries, front }) => [
    ...entries.flatMap(({ letter, lines }) =>
      (Object.keys(lines) as Role[]).map((role) => contactId(entryId(id, letter), role)),
    ),
    ...(Object.keys(front ?? {}) as Role[]).map((role) => frontId(id, role)),
  ]);
