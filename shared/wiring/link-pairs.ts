import type { RoleClass } from "../board/ids.ts";
import type { StationKind, Switching } from "../board/station-kinds.ts";
import type { Station } from "./wiring.schema.ts";

/** A link inside a kind of station, by the names of the buses it joins. */
export interface LinkPair {
  kind: "device" | "bar" | "fuse" | "contact" | "switch";
  conductor: RoleClass;
  /** The switch position that closes it; left out where it is closed in normal use. */
  closedIn?: 0 | 1;
  /** Left out where it comes in from the source or a bar. */
  from?: string;
  to: string;
}

const throughLinks = (liveKind: "fuse" | "contact"): LinkPair[] => [
  { kind: liveKind, from: "supply.L", to: "load.L", conductor: "live" },
  { kind: "contact", from: "supply.N", to: "load.N", conductor: "neutral" },
];

const linkPairs: Partial<Record<StationKind, readonly LinkPair[]>> = {
  way: [
    { kind: "device", to: "L", conductor: "live" },
    { kind: "bar", to: "N", conductor: "neutral" },
    { kind: "bar", to: "E", conductor: "earth" },
  ],
  fcu: throughLinks("fuse"),
  isolator: throughLinks("contact"),
  "cooker-control": throughLinks("contact"),
};

const switchLink = (from: string, to: string, closedIn: 0 | 1): LinkPair => ({
  kind: "switch",
  from,
  to,
  conductor: "live",
  closedIn,
});

const switchLinks: Record<Switching, readonly LinkPair[]> = {
  "one-way": [switchLink("L", "SL", 1)],
  "two-way": [switchLink("common", "strap1", 0), switchLink("common", "strap2", 1)],
  intermediate: [
    switchLink("strap-in.strap1", "strap-out.strap1", 0),
    switchLink("strap-in.strap2", "strap-out.strap2", 0),
    switchLink("strap-in.strap1", "strap-out.strap2", 1),
    switchLink("strap-in.strap2", "strap-out.strap1", 1),
  ],
};

/** The links inside a station: what its device, fuse, switch or contacts join. */
export const linkPairsOf = ({ kind, settings }: Station): readonly LinkPair[] =>
  kind === "plate-switch" ? switchLinks[settings?.switching ?? "one-way"] : (linkPairs[kind] ?? []);
