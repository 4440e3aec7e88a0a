import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { boardLines } from "../lines/board-lines.ts";
import type { ChainCheck } from "../health/chain-check.ts";
import { largestGroup } from "../lines/largest-group.ts";
import type { Lines } from "../lines/lines.ts";
import type { PinsThrough } from "../lines/open-pins.ts";
import type { ToScanner } from "./scanner-messages.ts";
import { SimulatedBoard } from "../lines/simulated-board.ts";
import { settleTimeUs } from "../lines/settle-time.ts";
import { SpinningLines } from "../lines/spinning-lines.ts";

/** An open board: its lines, and where it is simulated the hands that plug on it. */
export interface OpenBoard {
  lines: Lines;
  simulated?: SimulatedBoard;
  /** Which of the kernel's interfaces a real board's pins were opened through. */
  through?: PinsThrough;
  /** So many joined lines one output surely pulls; software pulls any. */
  largestGroup?: number;
  /** Shifts a known word round the loop of a chain. */
  chainCheck?: () => ChainCheck;
}

const defaultSpinUs = 6;

/**
 * Opens the board a message asks for. The makers for pins are loaded only when they are asked for, so that a
 * laptop never loads the GPIO package.
 *
 * @throws LinesError where a real board cannot be had; never falls back to simulation.
 */
export async function openBoard(
  message: Extract<ToScanner, { type: "open" }>,
  nowMs: () => number,
): Promise<OpenBoard> {
  const { board, lines: kind } = message;
  if (kind === "gpio") return openPinsOf(board);
  const simulated = new SimulatedBoard(board);
  if (message.leads !== undefined) simulated.restore(message.leads);
  for (const { contact, fault } of message.faults ?? []) simulated.setFault(contact, fault);
  if (kind === "simulated") return { lines: simulated.lines, simulated };
  return { lines: new SpinningLines(simulated.lines, message.spinUs ?? defaultSpinUs, nowMs), simulated };
}

async function openPinsOf(board: BoardDescription): Promise<OpenBoard> {
  const { wiring } = board;
  if (wiring.kind === "direct") {
    const { openDirectLines } = await import("../lines/direct-lines.ts");
    const lines = await openDirectLines({ pins: wiring.pins, settleUs: settleTimeUs(wiring) });
    return { lines, through: lines.through, largestGroup: largestGroup(wiring) };
  }
  const { lineCount, codeCount } = boardLines(board);
  const { openChainLines } = await import("../lines/chain-lines.ts");
  const lines = await openChainLines({
    pins: wiring.pins,
    lineCount,
    codeCount,
    settleUs: settleTimeUs(wiring),
  });
  const { through } = lines;
  return { lines, through, largestGroup: largestGroup(wiring), chainCheck: () => lines.chainCheck() };
}
