import type { Hindrance, SimulatedBoard } from "../lines/simulated-board.ts";
import type { ToScanner } from "./scanner-messages.ts";

/** What hands may be asked to do on the simulated board. */
export type ByHand = Exclude<
  ToScanner,
  { type: "open" | "close" | "attended" | "self-check" | "walk-test" | "test-lead" }
>;

/** Does it, or says what hinders it. */
export function doByHand(board: SimulatedBoard, request: ByHand, nowMs: number): Hindrance {
  switch (request.type) {
    case "plug":
      return board.plug(request.contactA, request.contactB);
    case "plug-cable":
      return board.plugCable(request.entryA, request.entryB, request.code, nowMs);
    case "pull":
      return board.pull(request.what);
    case "set-leads":
      return board.setLeads(request.to);
    case "probe":
      return board.probe(request.probe, request.at);
    case "set-fault":
      return board.setFault(request.contact, request.fault);
  }
}
