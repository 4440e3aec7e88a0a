import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, lineCountOf } from "./board-wiring.ts";
import { componentValues as values } from "../lines/component-values.ts";
import { pullPath } from "../lines/largest-group.ts";
import { settleTimeUs, usualElectrics } from "../lines/settle-time.ts";
import { powerBudget } from "./power-budget.ts";

/** One thing that was calculated for a board, with the limit it must keep to. */
export interface Calculation {
  what: string;
  how: string;
  value: number;
  unit: "V" | "mA" | "µs";
  /** At most or at least so much, in the same unit, and whose limit that is. */
  limit: { bound: "at most" | "at least"; value: number; source: string };
}

/** False where a value breaks its limit: the board is not built like that. */
export const isKept = ({ value, limit }: Calculation): boolean =>
  limit.bound === "at most" ? value <= limit.value : value >= limit.value;

/** A lead of two lines and the groups that stacked plugs make. */
const pairOfLines = 2;

/**
 * Levels, currents and times of a board as it is described, each beside the limit of the data sheets. A value that is
 * changed in `component-values.ts` shows here what it breaks.
 */
export function calculations(board: BoardDescription): Calculation[] {
  return board.wiring.kind === "chain"
    ? [...levels(board), ...chainCurrents(board), ...times(board)]
    : [...levels(board), ...directCurrents(board), ...times(board)];
}

function levels(board: BoardDescription): Calculation[] {
  const { supplyV } = values;
  const { pullUpOhm } = board.wiring.electrics ?? usualElectrics;
  const isChain = board.wiring.kind === "chain";
  const { lowV, pathOhm, lineA } = pullPath(board.wiring);
  const most = {
    bound: "at most",
    value: isChain ? values.inputLowV : values.piInputLowV,
    source: isChain ? "74HC165, VIL at 3.3 V" : "Raspberry Pi pin, VIL",
  } as const;
  const leakageA =
    (isChain ? values.diodeLeakageMicroamp + values.inputLeakageMicroamp : values.inputLeakageMicroamp) / 1e6;
  return [
    {
      what: `a pulled lead of ${pairOfLines} lines, at the far input`,
      how: `${lowV.toFixed(2)} V + ${pairOfLines} × ${(lineA * 1000).toFixed(2)} mA × ${pathOhm} Ω`,
      value: lowV + pairOfLines * lineA * pathOhm,
      unit: "V",
      limit: most,
    },
    {
      what: "a released line, its input and its diode leaking",
      how: `${supplyV} V − ${(leakageA * 1e6).toFixed(0)} µA × ${pullUpOhm} Ω`,
      value: supplyV - leakageA * pullUpOhm,
      unit: "V",
      limit: {
        bound: "at least",
        value: isChain ? values.inputHighV : values.piInputHighV,
        source: isChain ? "74HC165, VIH at 3.3 V" : "Raspberry Pi pin, VIH",
      },
    },
  ];
}

/** What one thing that pulls a line carries with a lead in, and with its contact shorted to 3.3 V. */
const pulling = (
  one: string,
  seriesOhm: number,
  { lineMilliamp, shortMilliamp }: ReturnType<typeof powerBudget>,
  limit: Calculation["limit"],
): Calculation[] => [
  {
    what: `${one} that pulls a lead of ${pairOfLines} lines`,
    how: `${pairOfLines} × ${lineMilliamp.toFixed(2)} mA`,
    value: pairOfLines * lineMilliamp,
    unit: "mA",
    limit,
  },
  {
    what: `${one} whose contact is shorted to 3.3 V`,
    how: `(3.3 V − low) ÷ ${seriesOhm} Ω`,
    value: shortMilliamp,
    unit: "mA",
    limit,
  },
];

function chainCurrents(board: BoardDescription): Calculation[] {
  const budget = powerBudget(board);
  const { shortMilliamp, worstMilliamp } = budget;
  const each = { bound: "at most", value: values.outputMostMilliamp, source: "74HC595, one output" } as const;
  const pinMilliamp = (values.supplyV / values.gpioResistorOhm) * 1000;
  return [
    ...pulling("an output", values.contactResistorOhm, budget, each),
    {
      what: "a 595 with all eight contacts shorted to 3.3 V",
      how: `8 × ${shortMilliamp.toFixed(1)} mA`,
      value: 8 * shortMilliamp,
      unit: "mA",
      limit: { bound: "at most", value: values.chipMostMilliamp, source: "74HC595, total to 0 V" },
    },
    {
      what: "a pin of the Pi that is shorted",
      how: `3.3 V ÷ ${values.gpioResistorOhm} Ω`,
      value: pinMilliamp,
      unit: "mA",
      limit: { bound: "at most", value: values.piPinMilliamp, source: "Raspberry Pi, one pin" },
    },
    rail(worstMilliamp),
  ];
}

function directCurrents(board: BoardDescription): Calculation[] {
  const budget = powerBudget(board);
  const each = { bound: "at most", value: values.piPinMilliamp, source: "Raspberry Pi, one pin" } as const;
  return [
    ...pulling("a pin", values.contactResistorOhm + values.gpioResistorOhm, budget, each),
    rail(budget.worstMilliamp),
  ];
}

const rail = (worstMilliamp: number): Calculation => ({
  what: "the whole board, all lines pulled",
  how: "every pull-up and every chip at rest",
  value: worstMilliamp,
  unit: "mA",
  limit: { bound: "at most", value: values.piSupplyMilliamp, source: "Raspberry Pi, its 3.3 V pins" },
});

function times(board: BoardDescription): Calculation[] {
  const { supplyV, inputHighV, piInputHighV } = values;
  const { pullUpOhm, capacitancePf } = board.wiring.electrics ?? usualElectrics;
  const isChain = board.wiring.kind === "chain";
  const highV = isChain ? inputHighV : piInputHighV;
  const riseUs = pullUpOhm * capacitancePf * 1e-6 * Math.log(supplyV / (supplyV - highV));
  const released: Calculation = {
    what: `a released line on a long lead of ${capacitancePf} pF, until it surely reads high`,
    how: `${pullUpOhm / 1000} kΩ × ${capacitancePf} pF × ln(3.3 ÷ (3.3 − ${highV}))`,
    value: riseUs,
    unit: "µs",
    limit: {
      bound: "at most",
      value: settleTimeUs(board.wiring),
      source: "the bench waits so long before it reads",
    },
  };
  if (!isChain) return [released];
  const chips = 2 * chipsFor(lineCountOf(board)) + chipsFor(codeCountOf(board));
  const clockPicofarad = chips * values.chipInputPicofarad + values.clockRunPicofarad;
  return [
    released,
    {
      what: `a clock edge at ${chips} chips, 10 to 90 %`,
      how: `2.2 × ${values.clockResistorOhm} Ω × (${chips} × ${values.chipInputPicofarad} pF + ${values.clockRunPicofarad} pF)`,
      value: 2.2 * values.clockResistorOhm * clockPicofarad * 1e-6,
      unit: "µs",
      limit: { bound: "at most", value: values.clockEdgeMostUs, source: "74HC, clock edge at 3.3 V" },
    },
  ];
}
