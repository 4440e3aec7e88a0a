import { byId } from "../../shared/board/ids.ts";
import type { BoardFaultKind, SensedState } from "../../shared/board/sensed-state.schema.ts";
import { type Plugged, pluggedOf } from "../../shared/wiring/plugged.ts";

/** Faults with which nothing can be told of any contact. */
const wholeBoardFaults: ReadonlySet<BoardFaultKind> = new Set([
  "open-chain",
  "wrong-length",
  "swapped-pins",
  "no-board",
  "noisy-board",
]);

/** False while a fault of the board hides all of it. */
export const isTellable = ({ faults }: SensedState): boolean =>
  !faults.some(({ kind }) => wholeBoardFaults.has(kind));

/** What is plugged by a state. A board that cannot be read is not an empty one: what was in stays, all unknown. */
export const pluggedNow = (before: Plugged, state: SensedState): Plugged =>
  isTellable(state) ? pluggedOf(state) : { ...before, unknown: state.unknown.toSorted(byId) };
