import type { BoardDescription, CableCode } from "../../shared/board/board.schema.ts";
import {
  type ContactId,
  contactId,
  entryId,
  type EntryId,
  frontId,
  type Role,
} from "../../shared/board/ids.ts";
import { type LineIndex, lineIndex } from "./line-index.ts";

/** One entry of the board: its contacts, and the code contacts of its plug, least significant first. */
export interface EntryLines {
  entry: EntryId;
  contacts: ContactId[];
  codeContacts: number[];
}

/** Which line each contact of a board is, and back. Nothing outside hardware/ ever sees a line. */
export interface BoardLines {
  boardId: string;
  lineCount: number;
  codeCount: number;
  lineOf: ReadonlyMap<ContactId, LineIndex>;
  contactOf: ReadonlyMap<LineIndex, ContactId>;
  probes: { red: LineIndex; black: LineIndex } | undefined;
  entries: EntryLines[];
  codes: ReadonlyMap<number, CableCode>;
}

export function boardLines(board: BoardDescription): BoardLines {
  const lineOf = new Map<ContactId, LineIndex>();
  const entries: EntryLines[] = [];
  for (const station of board.stations) {
    for (const entry of station.entries) {
      const id = entryId(station.id, entry.letter);
      const roles = Object.entries(entry.lines) as [Role, number][];
      for (const [role, line] of roles) lineOf.set(contactId(id, role), lineIndex(line));
      const contacts = roles.map(([role]) => contactId(id, role));
      entries.push({ entry: id, contacts, codeContacts: entry.codeContacts ?? [] });
    }
    for (const [role, line] of Object.entries(station.front ?? {}) as [Role, number][])
      lineOf.set(frontId(station.id, role), lineIndex(line));
  }
  const { wiring, probes } = board;
  return {
    boardId: board.id,
    lineCount: wiring.kind === "direct" ? wiring.pins.length : wiring.lineCount,
    codeCount: wiring.kind === "direct" ? 0 : (wiring.codeCount ?? 0),
    lineOf,
    contactOf: new Map([...lineOf].map(([contact, line]) => [line, contact])),
    probes: probes && { red: lineIndex(probes.red), black: lineIndex(probes.black) },
    entries,
    codes: new Map((board.codes ?? []).map((code) => [code.code, code])),
  };
}
