import type { LeadView } from "../../shared/protocol/lead-view.ts";
import { networkHosts } from "../web/origin.ts";
import type { Clock } from "../clock/clock.ts";
import type { People } from "../people/people.ts";
import type { LeadParts } from "./lead-parts.ts";

/** The addresses of this machine that a bench may be pointed to, those of the network first. */
const addresses = (port: number | undefined): string[] =>
  port === undefined
    ? []
    : [...networkHosts([])].filter((host) => /^\d+(\.\d+){3}$/.test(host)).map((host) => `${host}:${port}`);

/** All that the page of a lead shows. */
export function leadView(
  { workshop, link, packs }: LeadParts,
  clock: Clock,
  people: Pick<People, "byId">,
): LeadView {
  const { sent } = packs;
  const { code } = workshop;
  return {
    isLeading: workshop.isLeading,
    name: workshop.name,
    addresses: addresses(workshop.port),
    nowWallMs: clock.wallMs(),
    ...(code ? { code } : {}),
    isFrozen: workshop.isFrozen,
    projected: workshop.projected,
    benches: workshop.benches(),
    pack: sent
      ? {
          version: sent.pack.version,
          madeWallMs: sent.pack.madeWallMs,
          learnerCount: sent.pack.people.filter(({ role }) => role === "learner").length,
          taskCount: sent.pack.tasks.length,
          sentBy: people.byId(sent.pack.by.person)?.name ?? "",
        }
      : null,
    led: link.lead,
  };
}
