import type { BoardDescription } from "../board/board.schema.ts";
import { cableId, endsOfCable, type EntryId, entryId, stationOf } from "../board/ids.ts";
import { isToMend, type Place } from "../rules/rule.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import type { Change } from "./change.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";
import { choicesOf } from "./setting-choices.ts";

export interface Wired {
  scenario: StrippedScenario;
  board: Pick<BoardDescription, "stations">;
  built: Built;
}

/** Everything a learner could do next, one thing at a time: sizes and settings first, then pulls, then new cables. */
export function possibleChanges(wired: Wired): Change[] {
  const { scenario, built } = wired;
  const sizes = scenario.parts.cableCsaMm2;
  return [
    ...built.cables.flatMap(({ from, to, csaMm2 }) =>
      sizes
        .filter((size) => size !== csaMm2)
        .map((size): Change => ({ kind: "size", cable: cableId(from, to), csaMm2: size })),
    ),
    ...settingChanges(wired),
    ...built.cables
      .filter(({ conductors }) => conductors !== undefined)
      .map(({ conductors: _conductors, ...cable }): Change => ({ kind: "plug", cable, isAgain: true })),
    ...built.cables.map(({ from, to }): Change => ({ kind: "pull", cable: cableId(from, to) })),
    ...plugChanges(wired),
  ];
}

function settingChanges({ scenario, built }: Wired): Change[] {
  return scenario.stations.flatMap(({ id: station, chosen = [] }) =>
    chosen.flatMap((key) =>
      choicesOf(scenario, key)
        .filter((value) => value !== built.settings?.[station]?.[key])
        .map((value): Change => ({ kind: "set", station, key, value })),
    ),
  );
}

/**
 * A cable of each size between any two stations of the task with an entry free at each. The free entries of one side of
 * a station are joined within it, so that the first stands for all.
 */
function plugChanges({ scenario, board, built }: Wired): Change[] {
  const taken = new Set<EntryId>(built.cables.flatMap(({ from, to }) => [from, to]));
  const inTask = new Set(scenario.stations.map(({ id }) => id));
  const free = board.stations
    .filter(({ id }) => inTask.has(id))
    .flatMap(({ id, entries }) => {
      const open = entries.filter(({ letter }) => !taken.has(entryId(id, letter)));
      const sides = new Set(open.map(({ side }) => side));
      return [...sides].flatMap((side) => {
        const first = open.find((entry) => entry.side === side);
        return first ? [entryId(id, first.letter)] : [];
      });
    });
  const pairs = free.flatMap((from, at) =>
    free
      .slice(at + 1)
      .filter((to) => stationOf(to) !== stationOf(from))
      .map((to) => ({ from, to })),
  );
  return usualFirst(scenario.parts.cableCsaMm2, built).flatMap((csaMm2) =>
    pairs.map((pair): Change => ({ kind: "plug", cable: { ...pair, csaMm2 } })),
  );
}

/** Sizes in the order of how many cables are of them: the next cable is most likely of the same. */
function usualFirst(sizes: readonly number[], { cables }: Built): number[] {
  const countOf = (size: number): number => cables.filter(({ csaMm2 }) => csaMm2 === size).length;
  return sizes.toSorted((a, b) => countOf(b) - countOf(a));
}

/**
 * Those of the possible changes that lie near what a verdict names: its findings, what was kept back because of them,
 * and what the task still asks for.
 */
export function nearbyChanges(wired: Wired, { findings, requirements }: Verdict): Change[] {
  const named = [
    ...findings
      .filter(({ weight }) => isToMend(weight))
      .flatMap(({ causes, places }) => [...causes, ...places]),
    ...requirements.filter(({ answer }) => answer !== "met").flatMap(({ places }) => places),
  ];
  const stations = new Set<string>(named.flatMap(stationsOf));
  const touches = ({ from, to }: Pick<CableSpec, "from" | "to">): boolean =>
    stations.has(stationOf(from)) || stations.has(stationOf(to));
  return possibleChanges(wired).filter((change) => {
    if (change.kind === "set") return true;
    if (change.kind === "plug") return touches(change.cable);
    const [from, to] = endsOfCable(change.cable);
    return touches({ from, to });
  });
}

/** The stations a place is at, or lies between. */
const stationsOf = ({ kind, id }: Place): string[] =>
  kind === "station" ? [id] : id.split("~").map((end) => stationOf(end as EntryId));
