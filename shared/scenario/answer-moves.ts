import type { BoardDescription } from "../board/board.schema.ts";
import { cableId, type EntryId, entryId, stationOf } from "../board/ids.ts";
import { isTwoSided } from "../board/station-kinds.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import type { Change } from "./change.ts";
import { possibleChanges } from "./possible-changes.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";

/**
 * What a search for an answer does next, each move one or more changes at once. New cables in the thickest there is; sizes are chosen once every point that is asked for has its cable. Where it is
 * stuck also two things at once: a cable led to another place, and a unit put in with a cable on both its sides.
 */
export function answerMoves(
  scenario: StrippedScenario,
  board: Pick<BoardDescription, "stations">,
  { built, verdict, isStuck }: { built: Built; verdict: Verdict; isStuck: boolean },
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
  const alone = singles.map((change) => [change]);
  const plugs = singles.flatMap((change) => (change.kind === "plug" && !change.isAgain ? [change] : []));
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
