import { type CableId, cableId, type StationId } from "../board/ids.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import type { Built } from "./scenario.schema.ts";

/** One thing a learner does to what is built. */
export type Change =
  | { kind: "pull"; cable: CableId }
  /** Plugged, core to core unless the cable says otherwise. `isAgain`: it is in already, and is taken out first. */
  | { kind: "plug"; cable: CableSpec; isAgain?: true }
  | { kind: "size"; cable: CableId; csaMm2: number }
  | { kind: "set"; station: StationId; key: keyof StationSettings; value: string | number | boolean };

const idOf = ({ from, to }: CableSpec): CableId => cableId(from, to);

/** What is built after some changes. A pull or a size for a cable that is not there does nothing. */
export const changed = (built: Built, changes: readonly Change[]): Built =>
  changes.reduce(changedOnce, built);

function changedOnce(built: Built, change: Change): Built {
  switch (change.kind) {
    case "pull":
      return { ...built, cables: built.cables.filter((cable) => idOf(cable) !== change.cable) };
    case "plug": {
      const id = idOf(change.cable);
      return { ...built, cables: [...built.cables.filter((cable) => idOf(cable) !== id), change.cable] };
    }
    case "size": {
      const { cable: id, csaMm2 } = change;
      return {
        ...built,
        cables: built.cables.map((cable) => (idOf(cable) === id ? { ...cable, csaMm2 } : cable)),
      };
    }
    case "set": {
      const { station, key, value } = change;
      const settings = { ...built.settings?.[station], [key]: value };
      return { ...built, settings: { ...built.settings, [station]: settings } };
    }
  }
}

const isSameText = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

const order: readonly Change["kind"][] = ["pull", "plug", "size", "set"];
const rankOf = (change: Change): number =>
  change.kind === "plug" && !change.isAgain ? order.length : order.indexOf(change.kind);

/** Changes in the order in which they can be done: what frees an entry first, new cables last. */
export const inOrder = (changes: readonly Change[]): Change[] =>
  changes.toSorted((a, b) => rankOf(a) - rankOf(b));

/** The changes that make one wiring of a scenario into another. */
export function changesTo(built: Built, wanted: Built): Change[] {
  const there = new Map(built.cables.map((cable) => [idOf(cable), cable]));
  const wantedIds = new Set(wanted.cables.map(idOf));
  return [
    ...built.cables
      .filter((cable) => !wantedIds.has(idOf(cable)))
      .map((cable): Change => ({ kind: "pull", cable: idOf(cable) })),
    ...wanted.cables.flatMap((cable): Change[] => {
      const id = idOf(cable);
      const now = there.get(id);
      if (!now) return [{ kind: "plug", cable }];
      if (!isSameText(now.conductors, cable.conductors)) return [{ kind: "plug", cable, isAgain: true }];
      const { csaMm2 } = cable;
      return csaMm2 === undefined || now.csaMm2 === csaMm2 ? [] : [{ kind: "size", cable: id, csaMm2 }];
    }),
    ...Object.entries(wanted.settings ?? {}).flatMap(([station, settings]) =>
      Object.entries(settings).flatMap(([key, value]): Change[] => {
        const name = key as keyof StationSettings;
        const now = built.settings?.[station]?.[name];
        return value === undefined || now === value
          ? []
          : [{ kind: "set", station: station as StationId, key: name, value }];
      }),
    ),
  ];
}
