import { byId, type ContactId, type EntryId, entryOf } from "../board/ids.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** More than one lead on one contact of the board: one finding an entry. */
export const crowdedContact: Rule = {
  id: "crowded-contact",
  variants: { stacked: "fix" },
  source: { kind: "common practice, no source" },
  standsWithUnknown: true,
  check: (model) => {
    const byEntry = new Map<EntryId, ContactId[]>();
    for (const contact of model.conductorsAt.crowded) {
      const entry = entryOf(contact);
      byEntry.set(entry, [...(byEntry.get(entry) ?? []), contact]);
    }
    return [...byEntry].flatMap(([entry, contacts]) =>
      evidence("stacked", [at("entry", entry)], {}, allAt("contact", contacts.sort(byId))),
    );
  },
};
