import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { contactId, entryId, frontId, type Role } from "../../shared/board/ids.ts";
import { coreRoles } from "../../shared/board/station-kinds.ts";
import type { BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";

/** The face of a board for the screen: stations, entries and contacts, without their line numbers. */
export function boardFace(board: BoardDescription, isSimulated: boolean): BoardFace {
  return {
    id: board.id,
    name: board.name,
    isSimulated,
    hasCodes: (board.codes?.length ?? 0) > 0,
    hasProbes: board.probes !== undefined,
    stations: board.stations.map((station): FaceStation => {
      const { id, kind, label, face, entries, front, settings } = station;
      return {
        id,
        kind,
        label,
        face,
        ...(settings?.gangs === undefined ? {} : { gangs: settings.gangs }),
        ...(settings?.appliance === undefined ? {} : { appliance: settings.appliance }),
        entries: entries.map(({ letter, side, lines }) => {
          const entry = entryId(id, letter);
          const roles = coreRoles(kind, side, settings?.switching) ?? [];
          const contacts = roles
            .filter(({ role }) => lines[role] !== undefined)
            .map(({ role, core }) => ({ id: contactId(entry, role), role, core }));
          return { id: entry, letter, side, contacts };
        }),
        front: Object.keys(front ?? {}).map((role) => ({
          id: frontId(id, role as Role),
          role: role as Role,
        })),
      };
    }),
  };
}
