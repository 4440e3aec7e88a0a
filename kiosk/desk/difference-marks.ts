import {
  type CableId,
  cableOfConductor,
  type ConductorId,
  endsOfConductor,
  roleOf,
} from "../../shared/board/ids.ts";
import type { Words } from "../text/words.svelte.ts";
import { roleName } from "../wiring/place-name.ts";
import type { DeskWords } from "./desk-words.svelte.ts";
import type { Difference } from "./wiring-differences.ts";

type Side = "left" | "right";
/** What each cable that differs says on its label, by its id. */
type Marks = ReadonlyMap<string, string>;

/** A core by the letters of its two ends; by one where they are the same. */
function coreName(id: string, words: Pick<Words, "t">): string {
  const letters = endsOfConductor(id as ConductorId).map((end) => roleName(roleOf(end), words));
  return [...new Set(letters)].join("–");
}

/**
 * What differs between two wirings as it is written on their two plans: a cable that only one of them has, the cores
 * that a cable has on one side alone, and another size.
 */
export function differenceMarks(
  differences: readonly Difference[],
  words: Pick<DeskWords, "t">,
  benchWords: Pick<Words, "t">,
): Record<Side, Marks> {
  const said: Record<Side, Map<string, string>> = { left: new Map(), right: new Map() };
  const add = (side: Side, cable: string, text: string) => {
    const before = said[side].get(cable);
    said[side].set(cable, before === undefined ? text : `${before}, ${text}`);
  };
  const cores: Record<Side, Map<CableId, string[]>> = { left: new Map(), right: new Map() };
  for (const one of differences) {
    if (one.kind === "other-size") {
      for (const side of ["left", "right"] as const) add(side, one.id, words.t("replay.other-size-here"));
      continue;
    }
    const side = one.kind === "only-left" ? "left" : "right";
    if (one.what === "cable") add(side, one.id, words.t("replay.only-here"));
    else {
      const cable = cableOfConductor(one.id as ConductorId);
      cores[side].set(cable, [...(cores[side].get(cable) ?? []), coreName(one.id, benchWords)]);
    }
  }
  for (const [side, other] of [
    ["left", "right"],
    ["right", "left"],
  ] as const)
    for (const [cable, names] of cores[side]) {
      add(side, cable, words.t("replay.with", { cores: names.join(", ") }));
      add(other, cable, words.t("replay.without", { cores: names.join(", ") }));
    }
  return said;
}
