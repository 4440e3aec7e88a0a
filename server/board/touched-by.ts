import { byId, type ContactId, isFront } from "../../shared/board/ids.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { Probe, ProbeTouch } from "../../shared/protocol/test-view.ts";

const otherProbe = "other-probe";

/**
 * What a probe lead of the board touches, as far as a scan can tell. A test face is one contact. On a contact with a
 * lead in it the board cannot tell one end from the other: it is any of the contacts that the lead joins.
 */
export function touchedBy({ groups, probes }: SensedState, probe: Probe): ProbeTouch {
  const at = probes[probe];
  if (at === null) return [];
  return at === otherProbe ? otherProbe : endsAt(groups, at);
}

function endsAt(groups: SensedState["groups"], at: ContactId): ContactId[] {
  if (isFront(at)) return [at];
  const joined = groups.find((group) => group.includes(at)) ?? [at];
  return joined.filter((contact) => !isFront(contact)).toSorted(byId);
}
