import type { ContactId, EntryId } from "../../shared/board/ids.ts";
import type { BoardLines } from "../lines/board-lines.ts";
import type { FromScanner } from "../scan/scanner-messages.ts";
import type { SensedBoard } from "../scan/sensed-board.ts";

type LeadResult = Omit<Extract<FromScanner, { type: "lead-result" }>, "type" | "request">;

/**
 * What a lead plugged into two entries shows: which of their contacts it joins, which it leaves open (a broken
 * core, or one that the lead does not have), and the code read at each end.
 */
export function leadTest(
  board: BoardLines,
  sensed: SensedBoard,
  entryA: EntryId,
  entryB: EntryId,
): LeadResult {
  const contactsOf = (wanted: EntryId): ContactId[] =>
    board.entries.find(({ entry }) => entry === wanted)?.contacts ?? [];
  const [ofA, ofB] = [contactsOf(entryA), contactsOf(entryB)];
  const joined = sensed.groups.flatMap((group) =>
    group
      .filter((contact) => ofA.includes(contact))
      .flatMap((a) => group.filter((b) => ofB.includes(b)).map((b): [ContactId, ContactId] => [a, b])),
  );
  const met = new Set(joined.flat());
  return {
    joined,
    open: [...ofA, ...ofB].filter((contact) => !met.has(contact)),
    codes: sensed.codes.filter(({ entry }) => entry === entryA || entry === entryB),
  };
}
