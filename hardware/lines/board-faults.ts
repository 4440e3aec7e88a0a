import { byId, type ContactId, type StationId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { BoardLines } from "./board-lines.ts";
import type { LineIndex } from "./line-index.ts";
import type { LineHealth } from "./line-model.ts";

/**
 * What is wrong with lines, as faults of the board: one a kind and station with its contacts, one a probe, one a
 * set of outputs that are tied together, or a single `no-board` where not one line is well.
 */
export function boardFaults(
  board: BoardLines,
  health: readonly LineHealth[],
  tied: readonly (readonly LineIndex[])[] = [],
): BoardFault[] {
  const lines = [...board.contactOf.keys()];
  const isMute = (line: LineIndex): boolean =>
    ["no-answer", "stuck-low", "stuck-high"].includes(health[line]!);
  if (lines.every(isMute)) return [{ kind: "no-board", contacts: [] }];
  const contactsOf = new Map<string, { kind: LineHealth; station: StationId; contacts: ContactId[] }>();
  for (const [line, contact] of board.contactOf) {
    const kind = health[line]!;
    if (kind === "healthy" || kind === "outputs-tied") continue;
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
    return kind === undefined || kind === "healthy" || kind === "outputs-tied"
      ? []
      : [{ kind, contacts: [], facts: { probe } }];
  });
  return [...ofStations, ...ofProbes, ...tied.map((lines) => tiedOutputs(board, lines))];
}

/** Outputs that pull together are one fault, whichever stations they are of. */
function tiedOutputs(board: BoardLines, lines: readonly LineIndex[]): BoardFault {
  const contacts = lines.flatMap((line) => board.contactOf.get(line) ?? []).sort(byId);
  const stations = new Set(contacts.map(stationOf));
  const [station] = stations;
  return { kind: "outputs-tied", ...(stations.size === 1 && station && { station }), contacts };
}
