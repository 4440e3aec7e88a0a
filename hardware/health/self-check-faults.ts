import { byId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import { boardFaults } from "../lines/board-faults.ts";
import type { BoardLines } from "../lines/board-lines.ts";
import type { SelfCheck } from "./self-check.ts";

/** The result of a self-check as faults of the board; outputs that are tied together are one fault. */
export function selfCheckFaults(board: BoardLines, { health, tied }: SelfCheck): BoardFault[] {
  const others = health.map((each) => (each === "outputs-tied" ? "healthy" : each));
  const ofTied = tied.map((lines): BoardFault => {
    const contacts = lines.flatMap((line) => board.contactOf.get(line) ?? []).sort(byId);
    const stations = new Set(contacts.map(stationOf));
    const [station] = stations;
    return { kind: "outputs-tied", ...(stations.size === 1 && station && { station }), contacts };
  });
  return [...ofTied, ...boardFaults(board, others)];
}
