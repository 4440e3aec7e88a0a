import type { LineIndex } from "../lines/line-index.ts";
import type { LineHealth } from "../lines/line-model.ts";

/** What is sensed, in lines. */
export interface SensedLines {
  /** Groups of two and more joined lines, each in line order, by their least line. */
  groups: LineIndex[][];
  /** For every line, what is wrong with it. */
  health: LineHealth[];
  /** Sets of outputs that the self-check found to pull together. */
  tied: readonly (readonly LineIndex[])[];
  /** 1 where it cannot be told what the line is joined to. */
  unknown: Uint8Array;
  codes: Uint8Array;
  /** False while something changed so lately that a plug may be half in. */
  isSettled: boolean;
  /** True while decodes are refused one after the other: nothing that is read can be believed. */
  isNoisy: boolean;
  /** Time of the reading that showed it. */
  sensedAtMs: number;
}
