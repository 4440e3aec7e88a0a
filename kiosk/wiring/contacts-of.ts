import type { EntryId } from "../../shared/board/ids.ts";
import type { BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";

type FaceContact = FaceStation["entries"][number]["contacts"][number];

/** The contacts of an entry on the board's face; none where there is no such entry. */
export const contactsOf = (entry: EntryId, { stations }: BoardFace): FaceContact[] =>
  stations.flatMap(({ entries }) => entries).find(({ id }) => id === entry)?.contacts ?? [];
