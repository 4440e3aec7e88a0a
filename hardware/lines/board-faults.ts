import { byId, type ContactId, type StationId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { BoardLines } from "./board-lines.ts";
import type { LineIndex } from "./line-index.ts";
import type { LineHealth } from "./line-model.ts";

/**
 * What is wrong with lines, as faults of the board: one a kind and station with its contacts, one a probe, or a
 * single `no-board` where not one line is well.
 */
export function boardFaults(board: BoardLines, health: readonly LineHealth[]): BoardFault[] {
  const lines = [...board.contactOf.keys()];
  const isMute = (line: LineIndex): boolean => health[line] === "no-answer" || health[line] === "stuck-low";
  if (lines.every(isMute)) return [{ kind: "no-board", contacts: [] }];
  const contactsOf = new Map<string, { kind: LineHealth; station: StationId; contacts: ContactId[] }>();
  for (const [line, contact] of board.contactOf) {
    const kind = health[line]!;
    if (kind === "healthy") continue;
    const station = stationOf(contact);
    const fault = contactsOf.get(`${kind} ${station}`) ?? { kind, station, contacts: [] };
    fault.contacts.push(contact);
    contactsOf.set(`${kind} ${station}`, fault);
  }
  const ofStations = [...contactsOf.values()].flatMap(({ kind, station, contacts }): BoardFault[] =>
    kind === "healthy" ? [] : [{ kind, station, contacts: contacts.sort(byId) }],
  );
  const ofProbes = (["red", "black"] as const).flatMap((probe): BoardFault[] => {
    const kind = board.probes && health[board.probes[probe]];
    return kind === undefined || kind === "healthy" ? [] : [{ kind, contacts: [], facts: { probe } }];
  });
  return [...ofStations, ...ofProbes];
}
