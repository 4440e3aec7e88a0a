import type { DeadStep } from "../../shared/protocol/attempt-words.ts";
import type { DeadAct, DeadPair } from "../../shared/protocol/make-dead.schema.ts";
import { supply } from "../../shared/trade/supply.ts";

/** Breakers of the consumer unit, numbered from 1; the circuit chart says which of them feeds the circuit. */
export const breakers = [1, 2, 3] as const;

/** How a circuit that is being made dead stands: breakers, padlocks, and what the tester showed last. */
export interface DeadState {
  isChartRead: boolean;
  off: readonly number[];
  locked: readonly number[];
  /** The tester was proved since the circuit was locked off. */
  isProved: boolean;
  /** Pairs tested dead since then. */
  tested: readonly DeadPair[];
  isProvedAgain: boolean;
  /** What the tester shows: on the proving unit or between two terminals. */
  reading: { at: "proving-unit" | DeadPair; voltageV: number } | null;
  /** Why the last act does not count yet. */
  missed: DeadMiss | null;
}

/** Why an act does not count: what has to come before it, or what the tester shows. */
export type DeadMiss = "chart-first" | "lock-first" | "prove-first" | "live";

export const untouched: DeadState = {
  isChartRead: false,
  off: [],
  locked: [],
  isProved: false,
  tested: [],
  isProvedAgain: false,
  reading: null,
  missed: null,
};

/** The picture with the breaker of the task as the way was left at the step Test. */
export const withWay = (circuit: DeadState, breaker: number, isOff: boolean): DeadState => {
  const others = circuit.off.filter((one) => one !== breaker);
  return { ...circuit, off: isOff ? [...others, breaker].toSorted((a, b) => a - b) : others };
};

/** The tests of the sequence, by the terminals they are made between. */
export const deadPairs = ["L-N", "L-E", "N-E"] as const satisfies readonly DeadPair[];

const isIsolated = ({ isChartRead, off }: DeadState, breaker: number): boolean =>
  isChartRead && off.includes(breaker);
const isLockedOff = (circuit: DeadState, breaker: number): boolean =>
  isIsolated(circuit, breaker) && circuit.locked.includes(breaker);

/**
 * The steps that count now, in their order. What was tested counts only as long as the circuit stays locked off;
 * the sequence is that of `isolationSteps` in shared/trade.
 *
 * @param breaker the one that the chart names
 */
export function countedSteps(circuit: DeadState, breaker: number): DeadStep[] {
  const { isChartRead, isProved, tested, isProvedAgain } = circuit;
  const counts: Record<DeadStep, boolean> = {
    identify: isChartRead,
    isolate: isIsolated(circuit, breaker),
    "lock-off": isLockedOff(circuit, breaker),
    "prove-tester": isProved,
    "test-L-N": tested.includes("L-N"),
    "test-L-E": tested.includes("L-E"),
    "test-N-E": tested.includes("N-E"),
    "prove-tester-again": isProvedAgain,
  };
  return (Object.keys(counts) as DeadStep[]).filter((step) => counts[step]);
}

/** Volts the tester shows between two terminals of the circuit. */
const voltageBetween = (pair: DeadPair, isOn: boolean): number =>
  isOn && pair !== "N-E" ? supply.nominalV : 0;

/** Why a breaker or padlock cannot be moved, or undefined where it can. */
export function deadRefusal(circuit: DeadState, act: DeadAct): "dead-locked" | "dead-lock-on" | undefined {
  if (act.what === "breaker" && circuit.locked.includes(act.breaker)) return "dead-locked";
  if (act.what === "padlock" && !circuit.off.includes(act.breaker)) return "dead-lock-on";
  return undefined;
}

/** How it stands after an act that was not refused. Pure. */
export function afterDeadAct(before: DeadState, act: DeadAct, breaker: number): DeadState {
  const circuit = { ...before, missed: null };
  switch (act.what) {
    case "chart":
      return { ...circuit, isChartRead: true };
    case "breaker": {
      const off = toggled(circuit.off, act.breaker);
      const isUnread = !circuit.isChartRead && off.includes(act.breaker);
      return held({ ...circuit, off, missed: isUnread ? "chart-first" : null }, breaker);
    }
    case "padlock":
      return held({ ...circuit, locked: toggled(circuit.locked, act.breaker) }, breaker);
    case "proving-unit":
      return proved(circuit, breaker);
    case "test":
      return tested(circuit, act.between, breaker);
  }
}

const toggled = (numbers: readonly number[], number: number): number[] =>
  numbers.includes(number)
    ? numbers.filter((one) => one !== number)
    : [...numbers, number].toSorted((a, b) => a - b);

/** What was proved and tested falls with the lock. */
const held = (circuit: DeadState, breaker: number): DeadState =>
  isLockedOff(circuit, breaker)
    ? circuit
    : { ...circuit, isProved: false, tested: [], isProvedAgain: false, reading: null };

function proved(circuit: DeadState, breaker: number): DeadState {
  const shown = {
    ...circuit,
    reading: { at: "proving-unit" as const, voltageV: supply.nominalV },
  };
  if (!isLockedOff(circuit, breaker)) return { ...shown, missed: "lock-first" };
  const isAfter = circuit.isProved && circuit.tested.length === deadPairs.length;
  return isAfter ? { ...shown, isProvedAgain: true } : { ...shown, isProved: true };
}

function tested(circuit: DeadState, pair: DeadPair, breaker: number): DeadState {
  const voltageV = voltageBetween(pair, !circuit.off.includes(breaker));
  const shown = { ...circuit, reading: { at: pair, voltageV } };
  if (voltageV > 0) return { ...shown, missed: "live" };
  if (!isLockedOff(circuit, breaker)) return { ...shown, missed: "lock-first" };
  // A tester that was not proved may be silent because it is broken.
  if (!circuit.isProved) return { ...shown, missed: "prove-first" };
  return circuit.tested.includes(pair) ? shown : { ...shown, tested: [...circuit.tested, pair] };
}
