import type { CableId } from "../../shared/board/ids.ts";
import { type FaultName, isSameFault, nameOfFault } from "../../shared/electrical/fault-name.ts";
import { standingFaults } from "../../shared/electrical/hidden-faults.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import type { Reading } from "../../shared/wiring/wiring.schema.ts";

/** A hunt as its events tell it: what is hidden, what readings showed of it, and what the learner called it. */
export interface HuntState {
  faults: readonly HiddenFault[];
  /** How many of them, at the end of the row, a trainer hid while the work was open. */
  setCount: number;
  /** Cables that were out long enough to be new ones: what was hidden in them is gone. */
  renewed: readonly CableId[];
  /** Every reading on record in its order, those of before a change too. */
  readings: readonly Pick<Reading, "test" | "way" | "taken">[];
  /** By the place of a fault in the row: how many readings were on record when one first showed it. */
  shownAfter: Readonly<Record<number, number>>;
  /** Each with how many readings were on record when it was named. */
  named: readonly { name: FaultName; readingCount: number }[];
}

export const noHunt: HuntState = {
  faults: [],
  setCount: 0,
  renewed: [],
  readings: [],
  shownAfter: {},
  named: [],
};

/** One more is hidden, in a cable that is in: whatever was there before it is another one now. */
export const afterSetting = (hunt: HuntState, fault: HiddenFault): HuntState => ({
  ...hunt,
  faults: [...hunt.faults, fault],
  setCount: hunt.setCount + 1,
  renewed: "cable" in fault ? hunt.renewed.filter((cable) => cable !== fault.cable) : hunt.renewed,
});

/** Those that a trainer hid while the work was open: they alone can be taken back. */
export const setFaults = ({ faults, setCount }: Pick<HuntState, "faults" | "setCount">): HiddenFault[] =>
  setCount === 0 ? [] : faults.slice(-setCount);

/** One that a trainer hid is taken back; where nothing is hidden any more there is no hunt. */
export function afterUnsetting(hunt: HuntState, name: FaultName): HuntState | null {
  const gone = setFaults(hunt).find((fault) => isSameFault(nameOfFault(fault), name));
  if (!gone) return hunt;
  const faults = hunt.faults.filter((fault) => fault !== gone);
  return faults.length === 0 ? null : { ...hunt, faults, setCount: hunt.setCount - 1 };
}

/** The faults that meter and load run see now. */
export const faultsNow = ({ faults, renewed }: Pick<HuntState, "faults" | "renewed">): HiddenFault[] =>
  standingFaults(faults, new Map(renewed.map((cable) => [cable, Infinity])));

/** The cables that something is hidden in. */
export const cablesWithFaults = (hunt: HuntState): CableId[] => [
  ...new Set(faultsNow(hunt).flatMap((fault) => ("cable" in fault ? [fault.cable as CableId] : []))),
];

export const afterRenewal = (hunt: HuntState, cable: CableId): HuntState => ({
  ...hunt,
  renewed: [...hunt.renewed.filter((one) => one !== cable), cable],
});

export const afterReading = (hunt: HuntState, { test, way, taken }: Reading): HuntState => ({
  ...hunt,
  readings: [...hunt.readings, { test, way, ...(taken ? { taken } : {}) }],
});

/** The reading on record last showed a fault; what counts is the first that did. */
export const afterShown = (hunt: HuntState, faults: readonly number[]): HuntState => ({
  ...hunt,
  shownAfter: {
    ...Object.fromEntries(faults.map((fault) => [fault, hunt.readings.length])),
    ...hunt.shownAfter,
  },
});

export function afterNaming(hunt: HuntState, name: FaultName, isTakenBack: boolean): HuntState {
  const others = hunt.named.filter((one) => !isSameFault(one.name, name));
  return {
    ...hunt,
    named: isTakenBack ? others : [...others, { name, readingCount: hunt.readings.length }],
  };
}
