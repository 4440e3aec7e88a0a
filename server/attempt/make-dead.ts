import type { DeadStep } from "../../shared/protocol/attempt-words.ts";
import type { DeadAct, DeadPair } from "../../shared/protocol/make-dead.schema.ts";
import { supply } from "../../shared/trade/supply.ts";

/** Breakers of the picture, numbered from 1; the circuit chart says which of them feeds the circuit. */
export const breakers = [1, 2, 3] as const;

/** The picture on which a circuit is made dead: what stands how, and what was shown by the tester last. */
export interface DeadPicture {
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

export const untouched: DeadPicture = {
  isChartRead: false,
  off: [],
  locked: [],
  isProved: false,
  tested: [],
  isProvedAgain: false,
  reading: null,
  missed: null,
};

/** The tests of the sequence, by the terminals they are made between. */
export const deadPairs = ["L-N", "L-E", "N-E"] as const satisfies readonly DeadPair[];

const isIsolated = ({ isChartRead, off }: DeadPicture, breaker: number): boolean =>
  isChartRead && off.includes(breaker);
const isLockedOff = (picture: DeadPicture, breaker: number): boolean =>
  isIsolated(picture, breaker) && picture.locked.includes(breaker);

/**
 * The steps that count now, in their order. What was tested counts only as long as the circuit stays locked off;
 * the sequence is that of `isolationSteps` in shared/trade.
 *
 * @param breaker the one that the chart names
 */
export function countedSteps(picture: DeadPicture, breaker: number): DeadStep[] {
  const { isChartRead, isProved, tested, isProvedAgain } = picture;
  const counts: Record<DeadStep, boolean> = {
    identify: isChartRead,
    isolate: isIsolated(picture, breaker),
    "lock-off": isLockedOff(picture, breaker),
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
export function deadRefusal(picture: DeadPicture, act: DeadAct): "dead-locked" | "dead-lock-on" | undefined {
  if (act.what === "breaker" && picture.locked.includes(act.breaker)) return "dead-locked";
  if (act.what === "padlock" && !picture.off.includes(act.breaker)) return "dead-lock-on";
  return undefined;
}

/** The picture after an act that was not refused. Pure. */
export function afterDeadAct(before: DeadPicture, act: DeadAct, breaker: number): DeadPicture {
  const picture = { ...before, missed: null };
  switch (act.what) {
    case "chart":
      return { ...picture, isChartRead: true };
    case "breaker": {
      const off = toggled(picture.off, act.breaker);
      const isUnread = !picture.isChartRead && off.includes(act.breaker);
      return held({ ...picture, off, missed: isUnread ? "chart-first" : null }, breaker);
    }
    case "padlock":
      return held({ ...picture, locked: toggled(picture.locked, act.breaker) }, breaker);
    case "proving-unit":
      return proved(picture, breaker);
    case "test":
      return tested(picture, act.between, breaker);
  }
}

const toggled = (numbers: readonly number[], number: number): number[] =>
  numbers.includes(number)
    ? numbers.filter((one) => one !== number)
    : [...numbers, number].toSorted((a, b) => a - b);

/** What was proved and tested falls with the lock. */
const held = (picture: DeadPicture, breaker: number): DeadPicture =>
  isLockedOff(picture, breaker)
    ? picture
    : { ...picture, isProved: false, tested: [], isProvedAgain: false, reading: null };

function proved(picture: DeadPicture, breaker: number): DeadPicture {
  const shown = {
    ...picture,
    reading: { at: "proving-unit" as const, voltageV: supply.nominalV },
  };
  if (!isLockedOff(picture, breaker)) return { ...shown, missed: "lock-first" };
  const isAfter = picture.isProved && picture.tested.length === deadPairs.length;
  return isAfter ? { ...shown, isProvedAgain: true } : { ...shown, isProved: true };
}

function tested(picture: DeadPicture, pair: DeadPair, breaker: number): DeadPicture {
  const voltageV = voltageBetween(pair, !picture.off.includes(breaker));
  const shown = { ...picture, reading: { at: pair, voltageV } };
  if (voltageV > 0) return { ...shown, missed: "live" };
  if (!isLockedOff(picture, breaker)) return { ...shown, missed: "lock-first" };
  // A tester that was not proved may be silent because it is broken.
  if (!picture.isProved) return { ...shown, missed: "prove-first" };
  return picture.tested.includes(pair) ? shown : { ...shown, tested: [...picture.tested, pair] };
}
