import { allLines, type LineIndex } from "../lines/line-index.ts";
import { emptyModel, type LineModel, misfits } from "../lines/line-model.ts";
import type { Lines } from "../lines/lines.ts";
import { type Evidence, patternOf, pullEach, runScan, type Scan } from "./patterns.ts";
import { resolveClasses } from "./resolve-classes.ts";
import { bitPatterns, classesOf, hearsItself, indexBits, isSilent, signaturesOf } from "./signatures.ts";

/** What a decode believes of the board, and whether that foretells every reading it took. */
export interface Decode {
  isAccepted: boolean;
  model: LineModel;
  /** The code contacts as read with nothing pulled. */
  codes: Uint8Array;
  /** Lines with a reading that the model does not foretell; empty when accepted. */
  misfits: LineIndex[];
}

/** What is known of a board before it is decoded. */
export interface DecodeOptions {
  /** Lines that must not pull: outputs found tied. They still hear. */
  neverPull?: ReadonlySet<LineIndex>;
  /** Lines whose readings are not to be believed: loose contacts. */
  distrusted?: ReadonlySet<LineIndex>;
}

/** Decodes taken before the lines that do not fit are left out, and again after that. */
const plainAttempts = 4;
const attemptsWithout = 3;

const nobody: ReadonlySet<LineIndex> = new Set();

/**
 * Decodes the whole board: 2 ceil(log2 N) + 1 patterns, usually one more, instead of N. Repeats itself when the
 * result does not foretell every reading (something changed meanwhile); when lines keep misfitting, they become
 * unknown and the rest is decoded without them.
 */
export function* decode(lineCount: number, options: DecodeOptions = {}): Scan<Decode> {
  let distrusted = options.distrusted ?? nobody;
  let last: Decode | undefined;
  const misfitted = new Set<LineIndex>();
  for (let attempt = 1; attempt <= plainAttempts; attempt += 1) {
    last = yield* decodeOnce(lineCount, { ...options, distrusted });
    if (last.isAccepted) return last;
    if (attempt > plainAttempts - 2) last.misfits.forEach((line) => misfitted.add(line));
  }
  for (let attempt = 1; attempt <= attemptsWithout; attempt += 1) {
    distrusted = new Set([...distrusted, ...misfitted]);
    last = yield* decodeOnce(lineCount, { ...options, distrusted });
    if (last.isAccepted) return last;
    last.misfits.forEach((line) => misfitted.add(line));
  }
  return last!;
}

/** Decodes a board at once, its lines having nothing pulled. */
export const decodeLines = (lines: Lines, options: DecodeOptions = {}): Decode =>
  runScan(lines, decode(lines.lineCount, options));

/** One attempt: accepted only if the groups it gives foretell every reading of every one of its patterns. */
export function* decodeOnce(lineCount: number, options: DecodeOptions = {}): Scan<Decode> {
  const { neverPull = nobody, distrusted = nobody } = options;
  const mayPull = new Uint8Array(lineCount).fill(1);
  for (const line of [...neverPull, ...distrusted]) mayPull[line] = 0;
  const bits = yield* pullEach(lineCount, bitPatterns(lineCount, mayPull));
  const signatures = signaturesOf(lineCount, bits.evidence);

  const judged = allLines(lineCount).filter((line) => !distrusted.has(line));
  const stuck = judged.filter((line) => bits.released.lines[line] === 1);
  const silent = judged.filter((line) => bits.released.lines[line] === 0 && isSilent(signatures[line]!));
  const hearing = judged.filter((line) => bits.released.lines[line] === 0 && !isSilent(signatures[line]!));
  const isSelfHeard = (line: LineIndex): boolean =>
    hearsItself(line, signatures[line]!, indexBits(lineCount));
  const boardAnswers = hearing.some(isSelfHeard);

  // A line that cannot be heard may still pull: alone, it shows whom it is joined to.
  const doubtful = boardAnswers ? [...stuck, ...silent].filter((line) => !neverPull.has(line)) : [];
  const alone = yield* pullAlone(lineCount, [...doubtful, ...distrusted]);
  const heardBy = (line: LineIndex): LineIndex[] =>
    hearing.filter((other) => alone.get(line)?.reading[other] === 1);
  const linked = doubtful.map((line) => [line, ...heardBy(line)]).filter((group) => group.length > 1);

  const isLinked = new Set(linked.flat());
  const classes = classesOf(
    hearing.filter((line) => !isLinked.has(line)),
    signatures,
  );
  const resolved = yield* resolveClasses(lineCount, classes, isSelfHeard);
  // In a crowd a dead output hides behind the others, and a lead that goes in while classes are pulled together
  // can make a line of one class seem to answer the other: so every line of a crowd is pulled alone.
  const crowds = [...linked, ...resolved.groups].filter((group) => group.length > 2);
  const inCrowd = new Set(crowds.flat());
  const crowdAlone = yield* pullAlone(
    lineCount,
    hearing.filter((line) => inCrowd.has(line) && isSelfHeard(line)),
  );
  const doesNotPull = (line: LineIndex): boolean =>
    !isSelfHeard(line) || resolved.deadOutputs.has(line) || crowdAlone.get(line)?.reading[line] === 0;

  const model = emptyModel(lineCount);
  for (const group of [...linked, ...resolved.groups]) joinInModel(model, group);
  for (const line of hearing)
    if (doesNotPull(line)) {
      model.pulls[line] = 0;
      model.health[line] = "dead-output";
    }
  for (const line of [...stuck, ...silent]) {
    const isStuck = bits.released.lines[line] === 1;
    model.hearing[line] = isStuck ? "low" : "high";
    model.unknown[line] = isLinked.has(line) ? 0 : 1;
    model.health[line] = isLinked.has(line) ? "dead-input" : isStuck ? "stuck-low" : "no-answer";
  }
  for (const line of neverPull) {
    model.pulls[line] = 0;
    model.health[line] = "outputs-tied";
  }
  for (const line of distrusted) {
    model.pulls[line] = 0;
    model.hearing[line] = "unsteady";
    model.health[line] = "loose-contact";
    for (const unsure of [line, ...heardBy(line)]) model.unknown[unsure] = 1;
  }

  const evidence: Evidence[] = [
    ...bits.evidence,
    ...doubtful.map((line) => alone.get(line)!),
    ...resolved.evidence,
    ...crowdAlone.values(),
    ...[bits.released, ...resolved.released].map(({ lines }) => ({
      pulled: new Uint8Array(lineCount),
      reading: lines,
    })),
  ];
  const misfitted = new Set(evidence.flatMap(({ pulled, reading }) => misfits(model, pulled, reading)));
  return {
    isAccepted: misfitted.size === 0,
    model,
    codes: (resolved.released.at(-1) ?? bits.released).codes,
    misfits: [...misfitted],
  };
}

function* pullAlone(lineCount: number, lines: readonly LineIndex[]): Scan<Map<LineIndex, Evidence>> {
  if (lines.length === 0) return new Map();
  const { evidence } = yield* pullEach(
    lineCount,
    lines.map((line) => patternOf(lineCount, [line])),
  );
  return new Map(lines.map((line, index) => [line, evidence[index]!]));
}

function joinInModel({ groupOf }: LineModel, group: readonly LineIndex[]): void {
  const numbers = new Set(group.map((line) => groupOf[line]!));
  const least = Math.min(...numbers);
  groupOf.forEach((number, line) => {
    if (numbers.has(number)) groupOf[line] = least;
  });
}
