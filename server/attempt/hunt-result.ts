import { isSameFault, isSamePlace, nameOfFault } from "../../shared/electrical/fault-name.ts";
import type { HuntResult } from "../../shared/protocol/hunt-view.ts";
import { earlyTest } from "../../shared/rules/early-test.ts";
import { hiddenFaultName } from "../../shared/wiring/hunt-words.ts";
import type { HuntState } from "./hunt-state.ts";

/** The names, as the requirement has them, of the hidden faults that were named rightly. */
export const foundNames = ({ faults, named }: HuntState): string[] =>
  faults.flatMap((fault, index) =>
    named.some(({ name }) => isSameFault(name, nameOfFault(fault))) ? [hiddenFaultName(index)] : [],
  );

/**
 * What a hunt came to. For each fault one point for its kind, one for its place and cores, one for a reading on record
 * that showed it before it was named (a name without one is a guess); one more for all readings in the order of the
 * dead tests. The points are our own choice: found with the meter counts as much as named.
 */
export function huntResult(hunt: HuntState): HuntResult {
  const left = [...hunt.named];
  const take = (isIt: (one: (typeof left)[number]) => boolean) => {
    const at = left.findIndex(isIt);
    return at === -1 ? undefined : left.splice(at, 1)[0];
  };
  const rightly = hunt.faults.map((fault) => take(({ name }) => isSameFault(name, nameOfFault(fault))));
  const faults = hunt.faults.map((fault, index) => {
    const wanted = nameOfFault(fault);
    const found =
      rightly[index] ??
      take(({ name }) => isSamePlace(name, wanted)) ??
      take(({ name }) => name.kind === wanted.kind);
    const shownAfter = hunt.shownAfter[index];
    return {
      fault: wanted,
      isKindRight: found?.name.kind === wanted.kind,
      isPlaceRight: found !== undefined && isSamePlace(found.name, wanted),
      isShown: found !== undefined && shownAfter !== undefined && shownAfter <= found.readingCount,
    };
  });
  const isOrderKept = hunt.readings.length > 0 && earlyTest(hunt.readings, undefined) === undefined;
  const points = faults.reduce(
    (sum, { isKindRight, isPlaceRight, isShown }) =>
      sum + Number(isKindRight) + Number(isPlaceRight) + Number(isShown),
    Number(isOrderKept),
  );
  return {
    faults,
    isOrderKept,
    readingCount: hunt.readings.length,
    points,
    mostPoints: 3 * hunt.faults.length + 1,
  };
}
