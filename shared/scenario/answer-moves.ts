import type { BoardDescription } from "../board/board.schema.ts";
import { cableId, type EntryId, entryId, type StationId, stationOf } from "../board/ids.ts";
import { isTwoSided, type Side } from "../board/station-kinds.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import type { Change } from "./change.ts";
import { linkedStations, stationsAsked } from "./linked-stations.ts";
import { possibleChanges } from "./possible-changes.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";

/** So many new cables from one entry are tried of those that lead to stations that are alike. */
const mostOfAlike = 2;

export interface LookedAt {
  built: Built;
  verdict: Verdict;
  /** No move alone brought it nearer: two things at once may. */
  isStuck: boolean;
  lengthM: (one: StationId, other: StationId) => number;
}

/**
 * What a search for an answer does next, each move one or more changes at once. New cables go on from what a way is
 * linked with, in the thickest there is; sizes are chosen once every point that is asked for has its cable. Where it is
 * stuck a new cable may lie anywhere, and two things are done at once: a cable led to another place, and a unit put in
 * with a cable on both its sides.
 */
export function answerMoves(
  scenario: StrippedScenario,
  board: Pick<BoardDescription, "stations">,
  { built, verdict, isStuck, lengthM }: LookedAt,
): Change[][] {
  const thickestMm2 = Math.max(...scenario.parts.cableCsaMm2);
  const isFed = verdict.requirements.every(
    ({ requirement, answer }) => requirement.kind !== "served" || answer === "met",
  );
  const kept = new Set(
    scenario.requirements.flatMap((requirement) => (requirement.kind === "kept" ? requirement.cables : [])),
  );
  const singles = possibleChanges({ scenario, board, built }).filter((change) => {
    switch (change.kind) {
      case "plug":
        return change.isAgain === true || change.cable.csaMm2 === thickestMm2;
      case "pull":
        return !kept.has(change.cable);
      case "size":
        return isFed && !kept.has(change.cable);
      case "set":
        return true;
    }
  });
  const isNew = (change: Change): change is Plug => change.kind === "plug" && !change.isAgain;
  const usesOf = usesOn(board);
  const plugs = singles.filter(isNew).filter(({ cable: { from, to } }) => usesOf(from) === usesOf(to));
  const alone = [
    ...singles.filter((change) => !isNew(change)),
    ...(isStuck ? plugs : nearestOfAlike(scenario, built, onFromLinked(scenario, built, plugs), lengthM)),
  ].map((change) => [change]);
  const pulls = singles.flatMap((change) => (change.kind === "pull" ? [change.cable] : []));
  const loose = built.cables.filter(({ from, to }) => pulls.includes(cableId(from, to)));
  const units = unitsToPutIn(board, built);
  const withUnits = units.flatMap((unit) => putAtEnd(unit, plugs));
  if (!isStuck) return [...alone, ...withUnits];
  return [
    ...alone,
    ...withUnits,
    ...loose.flatMap((cable) => ledElsewhere(cable, plugs)),
    ...units.flatMap((unit) => loose.flatMap((cable) => putBetween(cable, unit))),
  ];
}

/**
 * What a cable at an entry is there for: a feed, a switch cable or strappers. One that leads from one use to another
 * joins no like to like.
 */
function usesOn({ stations }: Pick<BoardDescription, "stations">): (entry: EntryId) => string {
  const useOf = (side: Side): string =>
    side === "switch" ? "switch" : side.startsWith("strap") ? "straps" : "feed";
  const uses = new Map(
    stations.flatMap(({ id, entries }) =>
      entries.map(({ letter, side }) => [entryId(id, letter), useOf(side)] as const),
    ),
  );
  return (entry) => uses.get(entry) ?? "none";
}

/** New cables with an end at what a way is linked with. */
function onFromLinked(scenario: StrippedScenario, built: Built, plugs: readonly Plug[]): Plug[] {
  const linked = linkedStations(scenario, built);
  return plugs.filter(({ cable: { from, to } }) => linked.has(stationOf(from)) || linked.has(stationOf(to)));
}

/**
 * Of the new cables that lead from one entry to stations that are alike (of one kind and settings, with the same loads
 * and asked for in the same way) and have no cable yet, the shortest ones: any of them does what the others would.
 */
function nearestOfAlike(
  scenario: StrippedScenario,
  { cables }: Built,
  plugs: readonly Plug[],
  lengthM: LookedAt["lengthM"],
): Plug[] {
  const used = new Set(cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]));
  const likeness = new Map(
    scenario.stations
      .filter(({ id, kind }) => kind !== "way" && !used.has(id))
      .map((station) => [station.id, likenessOf(scenario, station)]),
  );
  const groupOf = ({ cable: { from, to } }: Plug): string =>
    [from, to]
      .map((entry) => {
        const alike = likeness.get(stationOf(entry));
        return alike === undefined ? entry : `${alike}.${entry.slice(stationOf(entry).length)}`;
      })
      .toSorted()
      .join("~");
  const groups = new Map<string, Plug[]>();
  for (const plug of plugs) groups.set(groupOf(plug), [...(groups.get(groupOf(plug)) ?? []), plug]);
  const runM = ({ cable: { from, to } }: Plug): number => lengthM(stationOf(from), stationOf(to));
  return [...groups.values()].flatMap((group) =>
    group.toSorted((a, b) => runM(a) - runM(b)).slice(0, mostOfAlike),
  );
}

const likenessOf = (
  { requirements, loads }: StrippedScenario,
  { id, kind, entries, settings, chosen }: StrippedScenario["stations"][number],
): string =>
  JSON.stringify([
    kind,
    entries,
    settings,
    chosen,
    loads.filter(({ station }) => station === id).map(({ powerW, isLongRunning }) => [powerW, isLongRunning]),
    requirements.flatMap((requirement, index) => (stationsAsked(requirement).includes(id) ? [index] : [])),
  ]);

type Plug = Extract<Change, { kind: "plug" }>;
interface Unit {
  supply: EntryId;
  load: EntryId;
}

const pulled = ({ from, to }: CableSpec): Change => ({ kind: "pull", cable: cableId(from, to) });

/** A cable taken out and another of its size put in where one of its ends was. */
function ledElsewhere(cable: CableSpec, plugs: readonly Plug[]): Change[][] {
  const ends = new Set([stationOf(cable.from), stationOf(cable.to)]);
  return plugs
    .filter((plug) => ends.has(stationOf(plug.cable.from)) || ends.has(stationOf(plug.cable.to)))
    .map((plug): Change[] => [
      pulled(cable),
      { kind: "plug", cable: { ...plug.cable, csaMm2: cable.csaMm2 } },
    ]);
}

/** Units with a supply side and a load side that nothing is plugged at. */
function unitsToPutIn({ stations }: Pick<BoardDescription, "stations">, { cables }: Built): Unit[] {
  const used = new Set(cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]));
  return stations
    .filter(({ id, kind }) => isTwoSided(kind) && !used.has(id))
    .flatMap(({ id, entries }) => {
      const [supply, load] = (["supply", "load"] as const).map((side) =>
        entries.find((entry) => entry.side === side),
      );
      return supply && load ? [{ supply: entryId(id, supply.letter), load: entryId(id, load.letter) }] : [];
    });
}

/** A unit put in where a cable was, either way round. */
const putBetween = ({ from, to, csaMm2 }: CableSpec, { supply, load }: Unit): Change[][] =>
  [
    { before: from, after: to },
    { before: to, after: from },
  ].map(({ before, after }): Change[] => [
    pulled({ from, to }),
    { kind: "plug", cable: { from: before, to: supply, csaMm2 } },
    { kind: "plug", cable: { from: load, to: after, csaMm2 } },
  ]);

/** A unit with a cable to it and one on from it. */
function putAtEnd({ supply, load }: Unit, plugs: readonly Plug[]): Change[][] {
  const at = (entry: EntryId): Plug[] => plugs.filter(({ cable }) => [cable.from, cable.to].includes(entry));
  return at(supply).flatMap((first) => at(load).map((second): Change[] => [first, second]));
}
