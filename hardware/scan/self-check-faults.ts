import { byId } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { SelfCheckResult } from "../health/self-check.ts";
import { boardFaults } from "../lines/board-faults.ts";
import type { BoardLines } from "../lines/board-lines.ts";
import type { LineIndex } from "../lines/line-index.ts";

const mostNoisyNamed = 6;

/**
 * What a self-check found, as faults of the board.
 *
 * @param isWordLost the word sent round a chain did not come back, though its inputs answer
 */
export function selfCheckFaults(
  board: BoardLines,
  { noisy, chipOrder, probesDown, health, tied }: SelfCheckResult,
  isWordLost: boolean,
): BoardFault[] {
  return [
    ...noisyAt(board, noisy),
    ...(chipOrder === undefined
      ? []
      : [{ kind: "wrong-order" as const, contacts: [], facts: { order: chipOrder } }]),
    ...(isWordLost ? [{ kind: "no-tie" as const, contacts: [] }] : []),
    ...probesAt(board, probesDown),
    ...boardFaults(board, health, tied),
  ];
}

/** A self-check whose rounds do not agree names where; so many places are the board as a whole. */
function noisyAt(board: BoardLines, noisy: readonly LineIndex[]): BoardFault[] {
  if (noisy.length === 0) return [];
  const contacts = noisy.flatMap((line) => board.contactOf.get(line) ?? []).sort(byId);
  return [{ kind: "noisy-board", contacts: contacts.length > mostNoisyNamed ? [] : contacts }];
}

/** A probe that lies on contacts, or on the other probe, is named as what it is. */
const probesAt = ({ contactOf, probes }: BoardLines, down: SelfCheckResult["probesDown"]): BoardFault[] =>
  down.map(({ probe, at }) => ({
    kind: "probe-down",
    contacts: at.flatMap((line) => contactOf.get(line) ?? []).sort(byId),
    facts: { probe: probe === probes?.red ? "red" : "black" },
  }));
