import type { ContactId } from "../../shared/board/ids.ts";
import type { Core } from "../../shared/board/station-kinds.ts";
import type { BoardHealthView, BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";

/** One core of the lead that is tested, seen from the first end where it has one there. */
export interface LeadRow {
  core: Core;
  at: ContactId;
  state: "joined" | "open" | "crossed";
  /** Where a crossed core goes. */
  to: ContactId[];
}

type Lead = NonNullable<BoardHealthView["lead"]>;
type Contact = FaceStation["entries"][number]["contacts"][number];

/**
 * What the lead between two entries shows, core by core. A core that only one of the two entries has a place for
 * is left out, unless something is joined to it.
 */
export function leadRows({ entryA, entryB, joined }: Lead, face: BoardFace): LeadRow[] {
  const contactsOf = (entry: string): Contact[] =>
    face.stations.flatMap(({ entries }) => entries).find(({ id }) => id === entry)?.contacts ?? [];
  const ofB = contactsOf(entryB);
  return contactsOf(entryA).flatMap(({ id, core }): LeadRow[] => {
    const partner = ofB.find((contact) => contact.core === core)?.id;
    const ends = joined.filter(([a]) => a === id).map(([, b]) => b);
    const astray = ends.filter((end) => end !== partner);
    if (astray.length > 0) return [{ core, at: id, state: "crossed", to: astray }];
    if (partner === undefined) return [];
    return [{ core, at: id, state: ends.length > 0 ? "joined" : "open", to: [] }];
  });
}
