import { entryOf, roleOf, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { Banner, BoardFace } from "../../shared/protocol/bench-view.ts";
import type { Words } from "../text/words.svelte.ts";
import { placeName, roleName } from "../wiring/place-name.ts";

/** More contacts than this are counted, not named, where there is room for them. */
const usuallyNamed = 6;

/**
 * Where a fault of the board is, in words: its contacts by station, each station named once; a probe; or the
 * whole board. At most `mostNamed` contacts are named, the rest counted.
 */
export function faultPlace(
  {
    station,
    contacts,
    facts,
  }: Pick<BoardFault, "station" | "contacts"> & { facts?: Banner["facts"] | undefined },
  face: BoardFace | null,
  words: Words,
  mostNamed = usuallyNamed,
): string {
  const probe = facts?.["probe"];
  if (probe === "red" || probe === "black")
    return words.t("health.where.probe", { colour: words.t(`health.where.${probe}`) });
  if (contacts.length === 0)
    return station === undefined ? words.t("health.where.board") : placeName(station, face, words);
  let before = "";
  const named = contacts.slice(0, mostNamed).map((contact) => {
    const isSame = before === stationOf(contact);
    before = stationOf(contact);
    if (!isSame) return placeName(contact, face, words);
    const letter = entryOf(contact).slice(before.length + 1);
    return `${letter === "front" ? words.t("wire.front") : letter} ${roleName(roleOf(contact), words)}`;
  });
  const where = named.join(", ");
  const more = contacts.length - named.length;
  return more === 0 ? where : words.t("health.where.more", { where, count: more });
}
