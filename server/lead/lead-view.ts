import type { LeadView } from "../../shared/protocol/lead-view.ts";
import { networkHosts } from "../web/origin.ts";
import type { Clock } from "../clock/clock.ts";
import type { LeadParts } from "./lead-parts.ts";

/** The addresses of this machine that a bench may be pointed to, those of the network first. */
const addresses = (port: number | undefined): string[] =>
  port === undefined
    ? []
    : [...networkHosts([])].filter((host) => /^\d+(\.\d+){3}$/.test(host)).map((host) => `${host}:${port}`);

/** All that the page of a lead shows. */
export function leadView({ workshop, link, packs }: LeadParts, clock: Clock): LeadView {
  const { sent } = packs;
  const { code } = workshop;
  return {
    isLeading: workshop.isLeading,
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
        }
      : null,
    led: link.lead,
  };
}
