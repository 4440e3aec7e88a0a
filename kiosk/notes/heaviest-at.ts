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

/** The same with the stations a cable ends at: on the board's face a cable is looked for at its ends. */
export const heaviestOnFace = (verdict: VerdictView | null): Map<string, Weight> => {
  const heaviest = heaviestAt(verdict);
  for (const [holder, weight] of [...heaviest])
    for (const end of holder.includes("~") ? holder.split("~") : []) {
      const station = end.slice(0, end.lastIndexOf("."));
      const known = heaviest.get(station);
      if (known === undefined || rank[weight] > rank[known]) heaviest.set(station, weight);
    }
  return heaviest;
};

/** The heaviest weight of the findings that name a contact, or a conductor that ends in it, by the contact. */
export const contactWeights = (verdict: VerdictView | null): Map<string, Weight> => {
  const weights = new Map<string, Weight>();
  if (!verdict || verdict.isHeld || !verdict.isCurrent) return weights;
  for (const { weight, places } of verdict.findings)
    for (const { kind, id } of places)
      for (const contact of kind === "contact" || kind === "conductor" ? id.split("~") : []) {
        const known = weights.get(contact);
        if (known === undefined || rank[weight] > rank[known]) weights.set(contact, weight);
      }
  return weights;
};
