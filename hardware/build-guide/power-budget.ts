import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf, pullUpOf } from "./board-wiring.ts";
import { componentValues as values } from "../lines/component-values.ts";
import { largestGroup, pullPath } from "../lines/largest-group.ts";

export interface PowerBudget {
  /** Every line pulled, every code contact strapped, chips at rest current: more than a scan ever draws. */
  worstMilliamp: number;
  worstMilliwatt: number;
  /** What one released line's pull-up gives when it is pulled. */
  lineMilliamp: number;
  /** A contact shorted to 3.3 V while it is pulled. */
  shortMilliamp: number;
  /** The largest group of joined lines that data sheets promise to read low. */
  largestPromisedGroup: number;
}

/** What the board draws from the Pi's 3.3 V, and how many lines one output surely pulls. */
export function powerBudget(board: BoardDescription): PowerBudget {
  const { supplyV, chipQuiescentMilliamp } = values;
  const pullUpOhm = pullUpOf(board);
  const [lines, codes] = [lineCountOf(board), codeCountOf(board)];
  const chips = board.wiring.kind === "chain" ? 2 * chipsFor(lines) + chipsFor(codes) + 1 : 0;
  const { lowV, pathOhm, lineA } = pullPath(board.wiring);
  const worstMilliamp = (lines + codes) * (supplyV / pullUpOhm) * 1000 + chips * chipQuiescentMilliamp;
  return {
    worstMilliamp,
    worstMilliwatt: worstMilliamp * supplyV,
    lineMilliamp: lineA * 1000,
    shortMilliamp: ((supplyV - lowV) / pathOhm) * 1000,
    largestPromisedGroup: largestGroup(board.wiring),
  };
}
