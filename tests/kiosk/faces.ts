import small from "../../hardware/boards/small.json" with { type: "json" };
import workshop from "../../hardware/boards/workshop.json" with { type: "json" };
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { contactId, entryId, frontId, type Role, stationId } from "../../shared/board/ids.ts";
import { coreRoles } from "../../shared/board/station-kinds.ts";
import type { BoardFace } from "../../shared/protocol/bench-view.ts";

/** The face of a board as the screen gets it: what the description says, without its lines. */
export const faceOf = (board: BoardDescription): BoardFace => ({
  id: board.id,
  name: board.name,
  isSimulated: true,
  hasCodes: board.codes !== undefined,
  hasProbes: board.probes !== undefined,
  stations: board.stations.map(({ id, kind, label, face, entries, front, settings }) => ({
    id: stationId(id),
    kind,
    label,
    ...(settings?.gangs ? { gangs: settings.gangs } : {}),
    ...(settings?.appliance ? { appliance: settings.appliance } : {}),
    face,
    entries: entries.map(({ letter, side }) => {
      const entry = entryId(id, letter);
      const places = coreRoles(kind, side, settings?.switching) ?? [];
      return {
        id: entry,
        letter,
        side,
        contacts: places.map(({ role, core }) => ({ id: contactId(entry, role), role, core })),
      };
    }),
    front: (Object.keys(front ?? {}) as Role[]).map((role) => ({ id: frontId(id, role), role })),
  })),
});

export const smallFace = faceOf(small as unknown as BoardDescription);
export const workshopFace = faceOf(workshop as unknown as BoardDescription);
