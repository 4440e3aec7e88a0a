import type { DeadPair } from "../../shared/protocol/make-dead.schema.ts";

export type Terminal = "L" | "N" | "E";

/** The pair of terminals that a tester is put between two terminals, whichever probe is first. */
export const betweenTerminals = (a: Terminal, b: Terminal): DeadPair => {
  const has = (terminal: Terminal) => a === terminal || b === terminal;
  if (has("L") && has("N")) return "L-N";
  return has("L") ? "L-E" : "N-E";
};
