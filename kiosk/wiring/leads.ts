import type { CableId, ContactId, EntryId } from "../../shared/board/ids.ts";
import type { SensedCable } from "../../shared/protocol/bench-view.ts";

/** Where a lead in a contact goes. */
export interface Lead {
  cable: CableId;
  to: ContactId;
}

/** All leads by the contacts they are in. */
export const leadsOf = (cables: readonly SensedCable[]): Map<ContactId, Lead[]> => {
  const leads = new Map<ContactId, Lead[]>();
  const add = (at: ContactId, lead: Lead) => leads.set(at, [...(leads.get(at) ?? []), lead]);
  for (const { id, conductors } of cables)
    for (const { from, to } of conductors) {
      add(from, { cable: id, to });
      add(to, { cable: id, to: from });
    }
  return leads;
};

/** The cables in an entry. */
export const cablesIn = (entry: EntryId, cables: readonly SensedCable[]): SensedCable[] =>
  cables.filter(({ from, to }) => from === entry || to === entry);
