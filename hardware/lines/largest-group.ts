import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { componentValues as values } from "./component-values.ts";
import { usualElectrics } from "./settle-time.ts";

/** What one pulled line gives, and what is between it and the input that is farthest from the output that pulls. */
export interface PullPath {
  /** Level right at what pulls. */
  lowV: number;
  pathOhm: number;
  lineA: number;
}

/** On a chain board the output lies behind a diode, on a direct board behind the pin's resistor. */
export function pullPath({ kind, electrics = usualElectrics }: BoardDescription["wiring"]): PullPath {
  const { supplyV, contactResistorOhm, gpioResistorOhm, diodeDropV, outputLowV } = values;
  const isChain = kind === "chain";
  const lowV = isChain ? diodeDropV + outputLowV : outputLowV;
  return {
    lowV,
    pathOhm: isChain ? contactResistorOhm : contactResistorOhm + gpioResistorOhm,
    lineA: (supplyV - lowV) / electrics.pullUpOhm,
  };
}

/**
 * How many joined lines one output surely pulls low. Each line of a group adds its pull-up's current to what flows to
 * the output that pulls; the farthest input sees the drop of all of it at its own contact's resistor.
 */
export function largestGroup(wiring: BoardDescription["wiring"]): number {
  const { lowV, pathOhm, lineA } = pullPath(wiring);
  const inputLowV = wiring.kind === "chain" ? values.inputLowV : values.piInputLowV;
  return Math.floor((inputLowV - lowV) / (lineA * pathOhm));
}
