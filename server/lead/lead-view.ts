import type { LeadView } from "../../shared/protocol/lead-view.ts";
import { everyAddress, networkHosts } from "../web/origin.ts";
import type { Clock } from "../clock/clock.ts";
import type { People } from "../people/people.ts";
import type { LeadParts } from "./lead-parts.ts";
import type { Workshop } from "./workshop.ts";

/** Where a bench may be pointed to: the address that is listened at, or those of this machine on the network. */
function addresses({ host, port }: Workshop): string[] {
  if (host === undefined || port === undefined) return [];
  const isEvery = host === everyAddress || host === "::";
  const hosts = isEvery ? [...networkHosts([])].filter((name) => /^\d+(\.\d+){3}$/.test(name)) : [host];
  const far = hosts.filter((name) => !name.startsWith("127."));
  return (far.length > 0 ? far : hosts).map((name) => `${name}:${port}`);
}

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
    addresses: addresses(workshop),
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
