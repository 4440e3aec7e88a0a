import type { ContactId, EntryId } from "./ids.ts";

/** What is in on a simulated board: leads, each between two contacts, and the codes strapped by plugs. */
export interface BoardLeads {
  leads: [ContactId, ContactId][];
  codes: { entry: EntryId; code: number }[];
}

export const noLeads: BoardLeads = { leads: [], codes: [] };
