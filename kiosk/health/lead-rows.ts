import type { ContactId } from "../../shared/board/ids.ts";
import type { Core } from "../../shared/board/station-kinds.ts";
import type { BoardHealthView, BoardFace } from "../../shared/protocol/bench-view.ts";
import { contactsOf } from "../wiring/contacts-of.ts";

/** One core of the lead that is tested, seen from the first end where it has one there. */
export interface LeadRow {
  core: Core;
  at: ContactId;
  state: "joined" | "open" | "crossed";
  /** Where a crossed core goes. */
  to: ContactId[];
}

type Lead = NonNullable<BoardHealthView["lead"]>;

/**
 * What the lead between two entries shows, core by core. A core that only one of the two entries has a place for
 * is left out, unless something is joined to it.
 */
export function leadRows({ entryA, entryB, joined }: Lead, face: BoardFace): LeadRow[] {
  const ofB = contactsOf(entryB, face);
  return contactsOf(entryA, face).flatMap(({ id, core }): LeadRow[] => {
    const partner = ofB.find((contact) => contact.core === core)?.id;
    const ends = joined.filter(([a]) => a === id).map(([, b]) => b);
    const astray = ends.filter((end) => end !== partner);
    if (astray.length > 0) return [{ core, at: id, state: "crossed", to: astray }];
    if (partner === undefined) return [];
    return [{ core, at: id, state: ends.length > 0 ? "joined" : "open", to: [] }];
  });
}
