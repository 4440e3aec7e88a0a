import type { LineIndex } from "../lines/line-index.ts";
import { type Evidence, patternOf } from "./patterns.ts";

/** Bits of a line's index on a board of that many lines. */
export const indexBits = (lineCount: number): number => Math.ceil(Math.log2(Math.max(lineCount, 1)));

/** Two patterns a bit: the lines whose bit is 1, then those whose bit is 0; lines not `mayPull` stay out. */
export function bitPatterns(lineCount: number, mayPull: Uint8Array): Uint8Array[] {
  const pulling = [...mayPull.keys()].filter((line) => mayPull[line] === 1) as LineIndex[];
  return Array.from({ length: 2 * indexBits(lineCount) }, (_, index) => {
    const bit = index >> 1;
    const wanted = index % 2 === 0 ? 1 : 0;
    return patternOf(
      lineCount,
      pulling.filter((line) => ((line >> bit) & 1) === wanted),
    );
  });
}

/**
 * What a line heard, bit by bit: in `ones` the bits of which it heard the value 1, in `zeros` the value 0. All
 * lines of a group hear the same.
 */
export interface Signature {
  ones: number;
  zeros: number;
}

/** The signatures of all lines from the evidence of `bitPatterns`. */
export function signaturesOf(lineCount: number, evidence: readonly Evidence[]): Signature[] {
  const signatures = Array.from({ length: lineCount }, () => ({ ones: 0, zeros: 0 }));
  evidence.forEach(({ reading }, index) => {
    const mask = 1 << (index >> 1);
    signatures.forEach((signature, line) => {
      if (reading[line] !== 1) return;
      if (index % 2 === 0) signature.ones |= mask;
      else signature.zeros |= mask;
    });
  });
  return signatures;
}

export const isSilent = ({ ones, zeros }: Signature): boolean => ones === 0 && zeros === 0;

/** True where the line heard its own index in every bit. */
export function hearsItself(line: LineIndex, { ones, zeros }: Signature, bits: number): boolean {
  const all = (1 << bits) - 1;
  return (ones & line) === (line & all) && (zeros & ~line & all) === (~line & all);
}

/** Lines that heard the same, in line order. */
export function classesOf(lines: Iterable<LineIndex>, signatures: readonly Signature[]): LineIndex[][] {
  const classes = new Map<number, LineIndex[]>();
  for (const line of lines) {
    const { ones, zeros } = signatures[line]!;
    const key = ones * 65_536 + zeros;
    const known = classes.get(key);
    if (known === undefined) classes.set(key, [line]);
    else known.push(line);
  }
  return [...classes.values()];
}
