import type { LineIndex } from "../lines/line-index.ts";
import { copyModel, type LineModel, membersByGroup, misfits, regroup } from "../lines/line-model.ts";
import { type Evidence, patternOf, pullEach, type Scan } from "./patterns.ts";

export interface TargetedDecode {
  /** The new belief, or undefined where the readings do not fit one. */
  model: LineModel | undefined;
  /** Lines that misread meanwhile for a reason of their own: the next to look at. */
  leftOver: LineIndex[];
  /** Everything read since is as it was believed: the reading that raised suspicion was a stray one. */
  isStray: boolean;
}

/**
 * Finds out what a few misreading lines are joined to, the rest of the board being as believed. The suspects are
 * let go; of all other groups one line a group is pulled, those whose number has a 1 in the bit at hand, so that
 * each suspect spells the number of its group in some 7 patterns, 0 if it is free. Then the suspects are pulled,
 * and where several are free once more by numbers of their own, so that two joined to each other are found.
 * Accepted only if the result foretells every reading since the first misread. All these patterns are a second look
 * as well: where they find everything as it was, the misread is known for a stray reading.
 *
 * @param carried what was read since the first misread
 * @param inFlight the pattern that is pulled now and not yet read
 */
export function* targetedDecode(
  model: LineModel,
  suspects: ReadonlySet<LineIndex>,
  neverPull: ReadonlySet<LineIndex>,
  carried: readonly Evidence[],
  inFlight: Uint8Array,
): Scan<TargetedDecode> {
  const lineCount = model.groupOf.length;
  const remaining = membersByGroup(model).map((group) => group.filter((line) => !suspects.has(line)));
  const pullers = remaining.flatMap((group) => group.filter((line) => model.pulls[line] === 1).slice(0, 1));
  const numbered = numberPatterns(lineCount, pullers);
  const mayPull = (line: LineIndex): boolean => !neverPull.has(line);
  const allSuspects = patternOf(lineCount, [...suspects].filter(mayPull));
  const spelled = yield* pullEach(lineCount, [...numbered, allSuspects]);
  const numberOf = (suspect: LineIndex): number =>
    numbered.reduce((number, _pattern, bit) => number | (spelled.evidence[bit]!.reading[suspect]! << bit), 0);

  const free = [...suspects].filter((line) => numberOf(line) === 0);
  const joined = [...suspects].filter((line) => numberOf(line) !== 0);
  const apart =
    free.length < 2
      ? undefined
      : yield* pullEach(lineCount, numberPatterns(lineCount, free.filter(mayPull).slice(1)));
  const partnerOf = (line: LineIndex): LineIndex | undefined => pullers[numberOf(line) - 1];
  // A lead to a line that could not be told before needs the full decode's verdict on its health.
  const isTold = (line: LineIndex | undefined): boolean => line !== undefined && model.unknown[line] !== 1;
  if (!joined.every((line) => isTold(partnerOf(line)))) return unexplained;

  const next = regroup(copyModel(model), [
    ...remaining.map((group) => group.concat(joined.filter((line) => group.includes(partnerOf(line)!)))),
    ...free.map((line) => [line]),
  ]);
  for (const line of suspects) believeHealthy(next, line, neverPull.has(line) && free.includes(line));
  for (const line of neverPull) next.pulls[line] = 0;

  // In a crowd a line may answer one of the others and not the next, as past a bridge of outputs: each pulls alone.
  const crowdPullers = membersByGroup(next)
    .filter((group) => group.length > 2 && group.some((line) => suspects.has(line)))
    .flatMap((group) => group.filter((line) => next.pulls[line] === 1));
  const crowded =
    crowdPullers.length === 0
      ? undefined
      : yield* pullEach(
          lineCount,
          crowdPullers.map((line) => patternOf(lineCount, [line])),
        );

  const since: Evidence[] = [
    { pulled: inFlight, reading: spelled.released.lines },
    ...spelled.evidence,
    ...[apart, crowded].flatMap((pulled) =>
      pulled === undefined
        ? []
        : [{ pulled: patternOf(lineCount, []), reading: pulled.released.lines }, ...pulled.evidence],
    ),
  ];
  const changed = changedLines(model, next);
  const fits = ({ pulled, reading }: Evidence): boolean => misfits(next, pulled, reading).length === 0;
  if (changed.size === 0 && since.every(fits) && !carried.every(fits))
    return { ...unexplained, isStray: true };
  const misreads = [...carried, ...since]
    .map(({ pulled, reading }) => misfits(next, pulled, reading))
    .filter((lines) => lines.length > 0);
  const isExplained = misreads.flat().every((line) => !changed.has(line) && !suspects.has(line));
  if (!isExplained) return unexplained;
  // Of one pattern only: there the other end of a new lead was pulled and is no suspect.
  return { model: next, leftOver: misreads.at(-1) ?? [], isStray: false };
}

const unexplained: TargetedDecode = { model: undefined, leftOver: [], isStray: false };

/** One pattern a bit of the lines' numbers, which count from 1; at least `leastCount` patterns. */
export function numberPatterns(lineCount: number, lines: readonly LineIndex[], leastCount = 0): Uint8Array[] {
  const bits = Math.max(leastCount, Math.ceil(Math.log2(lines.length + 1)));
  return Array.from({ length: bits }, (_, bit) =>
    patternOf(
      lineCount,
      lines.filter((_line, index) => (((index + 1) >> bit) & 1) === 1),
    ),
  );
}

/** The lines that are joined to other lines than before. */
export function changedLines(before: LineModel, after: LineModel): Set<LineIndex> {
  const groups = new Map(membersByGroup(before).map((group) => [group.join(), group]));
  return new Set(
    membersByGroup(after)
      .filter((group) => !groups.has(group.join()))
      .flat(),
  );
}

function believeHealthy(model: LineModel, line: LineIndex, isTiedAndFree: boolean): void {
  model.pulls[line] = 1;
  model.hearing[line] = isTiedAndFree ? "high" : "follows";
  model.unknown[line] = isTiedAndFree ? 1 : 0;
  if (model.health[line] !== "outputs-tied") model.health[line] = "healthy";
}
