import type { FaultName } from "../../shared/electrical/fault-name.ts";
import type { BoardFace } from "../../shared/protocol/bench-view.ts";
import type { HuntKey } from "../text/hunt-texts.ts";
import type { Words } from "../text/words.svelte.ts";
import { placeName } from "../wiring/place-name.ts";

/** A fault in words: what it is, in which cores, where. */
export function faultText(
  { kind, cores, place }: FaultName,
  face: BoardFace | null,
  words: Pick<Words<HuntKey>, "t">,
): string {
  const said = cores.map((core) => words.t(`role.${core}`)).join("–");
  return [words.t(`hunt.kind.${kind}`), said, placeName(place, face, words)]
    .filter((part) => part !== "")
    .join(" · ");
}
