import { byId, type ContactId, type EntryId, entryOf, isFront, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import { boardFaults } from "../lines/board-faults.ts";
import type { BoardLines, EntryLines } from "../lines/board-lines.ts";
import type { LineIndex } from "../lines/line-index.ts";
import type { SensedLines } from "./sensed-lines.ts";

/** What a state holds but for its number and its time. */
export type SensedBoard = Omit<SensedState, "revision" | "monotonicMs">;

/** A scan in terms of the board: contacts in place of lines, probes apart, codes read, faults named. */
export function sensedBoard(board: BoardLines, sensed: SensedLines): SensedBoard {
  if (sensed.isNoisy) return untellableBoard(board, [{ kind: "noisy-board", contacts: [] }]);
  const contactsIn = (lines: readonly LineIndex[]): ContactId[] =>
    lines.flatMap((line) => board.contactOf.get(line) ?? []).sort(byId);
  const groups = sensed.groups
    .map(contactsIn)
    .filter((contacts) => contacts.length > 1)
    .sort((a, b) => byId(a[0]!, b[0]!));
  const unknown = [...board.contactOf]
    .filter(([line]) => sensed.unknown[line] === 1)
    .map(([, contact]) => contact)
    .sort(byId);
  const coded = board.entries
    .map((entry) => ({ ...entry, code: codeAt(entry, sensed.codes) }))
    .filter(({ code }) => code !== 0);
  const differing = differingCodes(groups, coded);
  const isSure = ({ entry, code }: { entry: EntryId; code: number }): boolean =>
    board.codes.has(code) && !differing.some((pair) => pair.some((end) => end.entry === entry));
  return {
    boardId: board.boardId,
    groups,
    codes: coded.filter(isSure).map(({ entry, code }) => ({ entry, code })),
    unknown,
    probes: { red: touchedBy(board, sensed, "red"), black: touchedBy(board, sensed, "black") },
    faults: [
      ...boardFaults(board, sensed.health, sensed.tied).map((fault) => withOtherEnds(fault, groups)),
      ...(sensed.isSettled ? differing.map(codesDiffer) : []),
      ...codeFaults(board, coded, new Set([...groups.flat(), ...unknown]), sensed.isSettled),
    ],
    isSettled: sensed.isSettled,
  };
}

/**
 * An output that does not pull on a lead reads as one that is held high from the other end, past a bridged diode:
 * both places are named.
 */
function withOtherEnds(fault: BoardFault, groups: readonly ContactId[][]): BoardFault {
  if (fault.kind !== "dead-output") return fault;
  const otherEnds = groups
    .filter((group) => group.some((contact) => fault.contacts.includes(contact)))
    .flatMap((group) => group.filter((contact) => !fault.contacts.includes(contact)));
  return otherEnds.length === 0 ? fault : { ...fault, facts: { otherEnds: otherEnds.join(" ") } };
}

type Coded = EntryLines & { code: number };

/** The two ends of leads whose plugs tell different codes: neither says what size the cable is. */
function differingCodes(groups: readonly ContactId[][], coded: readonly Coded[]): [Coded, Coded][] {
  const at = new Map(coded.map((end) => [end.entry, end]));
  const pairs = new Map<string, [Coded, Coded]>();
  for (const [a, b, ...more] of groups) {
    const [one, other] = [a && at.get(entryOf(a)), b && at.get(entryOf(b))];
    if (more.length === 0 && one && other && one.code !== other.code)
      pairs.set(`${one.entry} ${other.entry}`, [one, other]);
  }
  return [...pairs.values()];
}

const codesDiffer = ([one, other]: [Coded, Coded]): BoardFault => ({
  kind: "codes-differ",
  contacts: [...one.contacts, ...other.contacts],
  facts: { entryA: one.entry, codeA: one.code, entryB: other.entry, codeB: other.code },
});

/** The same board with nothing to be told of it, and why: its chain is cut, its pins are swapped. */
export const untellableBoard = (board: BoardLines, faults: BoardFault[]): SensedBoard => ({
  boardId: board.boardId,
  groups: [],
  codes: [],
  unknown: [...board.lineOf.keys()].sort(byId),
  probes: { red: null, black: null },
  faults,
  isSettled: true,
});

const codeAt = ({ codeContacts }: EntryLines, codes: Uint8Array): number =>
  codeContacts.reduce((code, contact, bit) => code | ((codes[contact] ?? 0) << bit), 0);

function codeFaults(
  board: BoardLines,
  coded: readonly (EntryLines & { code: number })[],
  inUse: ReadonlySet<ContactId>,
  isSettled: boolean,
): BoardFault[] {
  // While a plug goes in its code may be there before its cores.
  if (!isSettled) return [];
  return coded.flatMap(({ entry, contacts, code }): BoardFault[] => {
    const station = stationOf(entry);
    if (!board.codes.has(code)) return [{ kind: "unknown-code", station, contacts, facts: { entry, code } }];
    if (!contacts.some((contact) => inUse.has(contact)))
      return [{ kind: "code-without-cable", station, contacts, facts: { entry, code } }];
    return [];
  });
}

/** What a probe touches. On a contact with a lead in it the probe touches both ends: a test face is named first. */
function touchedBy(
  { contactOf, probes }: BoardLines,
  { groups }: SensedLines,
  probe: "red" | "black",
): SensedState["probes"]["red"] {
  if (!probes) return null;
  const group = groups.find((lines) => lines.includes(probes[probe]));
  if (!group) return null;
  const touched = group.flatMap((line) => contactOf.get(line) ?? []).sort(byId);
  const other = probes[probe === "red" ? "black" : "red"];
  return touched.find(isFront) ?? touched[0] ?? (group.includes(other) ? "other-probe" : null);
}
