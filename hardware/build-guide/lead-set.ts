import type { BoardDescription, CableCode } from "../../shared/board/board.schema.ts";
import { leadCountOf } from "./board-wiring.ts";

/** Leads of one kind to make; without a code where the board has none. */
export interface LeadKind {
  code?: CableCode;
  quantity: number;
}

/**
 * Leads of two cores and earth by size, in mm²: what any task that ships needs at once, with some for a learner who
 * takes another size. `coded-leads.test.ts` holds it to every model answer.
 */
const twinLeads: Readonly<Record<number, number>> = { 1: 6, 1.5: 8, 2.5: 10, 4: 6, 6: 4, 10: 2 };
const otherLeads = 2;
const twinCores = 3;

/** The leads that belong to a board, in the order of their codes. */
export function leadSet(board: BoardDescription): LeadKind[] {
  if (board.codes === undefined || board.codes.length === 0) return [{ quantity: leadCountOf(board) }];
  return board.codes.map((code) => ({
    code,
    quantity: (code.cores.length === twinCores ? twinLeads[code.csaMm2] : undefined) ?? otherLeads,
  }));
}
