import { cableOfConductor } from "../../shared/board/ids.ts";
import { pluggedOf } from "../../shared/wiring/plugged.ts";
import type { BoardNow } from "./board-now.ts";

/** How many cables are sensed on the board, whoever left them there. */
export const cablesLeft = ({ sensed }: Pick<BoardNow, "sensed">): number =>
  sensed ? new Set(pluggedOf(sensed).joins.map(cableOfConductor)).size : 0;
