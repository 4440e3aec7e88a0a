import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { BoardLeads } from "../../shared/board/board-leads.ts";
import {
  type CableId,
  cableOfConductor,
  conductorId,
  contactId,
  type ContactId,
  endsOfConductor,
  type EntryId,
} from "../../shared/board/ids.ts";
import { conductorsOf, coreRolesOf, stationsById, straightCores } from "../../shared/wiring/conductors-of.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";

type Lead = BoardLeads["leads"][number];

/** The leads of a board as it was last sensed. Of contacts stacked on one another each is led to the first. */
export const leadsOfPlugged = ({ joins, codes }: Plugged): BoardLeads => ({
  leads: joins.map((join) => endsOfConductor(join)),
  codes,
});

/**
 * The leads of a whole cable between two entries, core to core. A coded cable has the cores its code lists and no
 * others.
 */
export function leadsOfCable(board: BoardDescription, from: EntryId, to: EntryId, code?: number): Lead[] {
  const stations = stationsById(board.stations);
  const cores = board.codes?.find((one) => one.code === code)?.cores;
  const roles = coreRolesOf(from, stations);
  return straightCores(from, to, stations)
    .filter(
      (pair) =>
        cores === undefined ||
        roles.some(({ core, role }) => cores.includes(core) && pair.from === contactId(from, role)),
    )
    .map((pair) => [pair.from, pair.to]);
}

/** The code of the cable of a size that joins most between two entries; undefined where the board has none. */
export function codeForCable(
  board: BoardDescription,
  from: EntryId,
  to: EntryId,
  csaMm2: number | undefined,
): number | undefined {
  const ofSize = (board.codes ?? []).filter((one) => one.csaMm2 === csaMm2);
  const joins = ({ code }: { code: number }): number => leadsOfCable(board, from, to, code).length;
  return ofSize.toSorted((a, b) => joins(b) - joins(a))[0]?.code;
}

/** The leads of cables as a scenario states them. */
export const leadsOfSpecs = (board: BoardDescription, cables: readonly CableSpec[]): Lead[] => {
  const stations = stationsById(board.stations);
  return cables.flatMap((cable) => conductorsOf(cable, stations).map(({ from, to }): Lead => [from, to]));
};

/** The leads of a cable as it is drawn; where plugs are stacked, those that touch it. */
export function leadsOfDrawnCable({ leads }: BoardLeads, cable: CableId, ends: readonly ContactId[]): Lead[] {
  const own = leads.filter(([from, to]) => cableOfConductor(conductorId(from, to)) === cable);
  return own.length > 0 ? own : leads.filter((lead) => lead.some((contact) => ends.includes(contact)));
}

/** True where a lead is in between two contacts. */
export const isLeadIn = ({ leads }: BoardLeads, a: ContactId, b: ContactId): boolean =>
  leads.some((lead) => lead.includes(a) && lead.includes(b));
