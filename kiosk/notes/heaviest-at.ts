import type { VerdictView } from "../../shared/protocol/bench-view.ts";
import type { Place, Weight } from "./weight.ts";

const rank: Record<Weight, number> = { danger: 3, fix: 2, query: 1, note: 0 };

/** The station or cable that a place lies on. */
export const holderOf = ({ kind, id }: Place): string => {
  if (kind === "station" || kind === "cable") return id;
  if (kind === "conductor")
    return id
      .split("~")
      .map((contact) => contact.slice(0, contact.lastIndexOf(".")))
      .join("~");
  return id.slice(0, id.indexOf("."));
};

/** The heaviest weight of all findings that show at a station or cable, by its id. */
export const heaviestAt = (verdict: VerdictView | null): Map<string, Weight> => {
  const heaviest = new Map<string, Weight>();
  if (!verdict || verdict.isHeld || !verdict.isCurrent) return heaviest;
  for (const { weight, places } of verdict.findings)
    for (const place of places) {
      const holder = holderOf(place);
      const known = heaviest.get(holder);
      if (known === undefined || rank[weight] > rank[known]) heaviest.set(holder, weight);
    }
  return heaviest;
};
