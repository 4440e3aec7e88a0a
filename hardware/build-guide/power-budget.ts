import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf } from "./board-wiring.ts";
import { componentValues as values } from "./component-values.ts";

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

/**
 * What the board draws from the Pi's 3.3 V, and how many lines one output surely pulls.
 * Each line of a group adds its pull-up's current to what flows to the pulling output; the farthest input sees the
 * drop of all of it, its own contact's resistor included. On a chain board the output lies behind a diode, on a
 * direct board behind the pin's resistor.
 */
export function powerBudget(board: BoardDescription): PowerBudget {
  const { supplyV, pullUpOhm, contactResistorOhm, gpioResistorOhm, diodeDropV, outputLowV } = values;
  const isChain = board.wiring.kind === "chain";
  const [lines, codes] = [lineCountOf(board), codeCountOf(board)];
  const chips = isChain ? 2 * chipsFor(lines) + chipsFor(codes) + 1 : 0;
  const lowV = isChain ? diodeDropV + outputLowV : outputLowV;
  const pathOhm = isChain ? contactResistorOhm : contactResistorOhm + gpioResistorOhm;
  const inputLowV = isChain ? values.inputLowV : values.piInputLowV;
  const lineMilliamp = ((supplyV - lowV) / pullUpOhm) * 1000;
  const worstMilliamp = (lines + codes) * (supplyV / pullUpOhm) * 1000 + chips * values.chipQuiescentMilliamp;
  return {
    worstMilliamp,
    worstMilliwatt: worstMilliamp * supplyV,
    lineMilliamp,
    shortMilliamp: ((supplyV - lowV) / pathOhm) * 1000,
    largestPromisedGroup: Math.floor((inputLowV - lowV) / ((lineMilliamp / 1000) * pathOhm)),
  };
}
