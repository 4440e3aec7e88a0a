import type { ContactId } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";

/** The contacts at the other end of the leads at a fault, where it may be there as well; mostly none. */
export const otherEndsOf = ({ facts }: Pick<BoardFault, "facts">): ContactId[] =>
  String(facts?.["otherEnds"] ?? "")
    .split(" ")
    .filter((name) => name !== "") as ContactId[];
