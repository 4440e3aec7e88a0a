import type { LeadNames } from "./find-leads.ts";
import type { LeadLink } from "./lead-link.ts";
import type { PackKeeper } from "./pack-keeper.ts";
import type { Workshop } from "./workshop.ts";

/** What a bench leads with, and what it is led by. */
export interface LeadParts {
  workshop: Workshop;
  link: LeadLink;
  packs: PackKeeper;
  /** Undefined where nothing is asked of the network's names: in checks. */
  names: LeadNames | undefined;
}
