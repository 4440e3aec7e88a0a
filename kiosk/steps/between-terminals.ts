export type Terminal = "L" | "N" | "E";

/** The test of the make-dead sequence that is made between two terminals, whichever probe is first. */
export const betweenTerminals = (a: Terminal, b: Terminal): "test-L-N" | "test-L-E" | "test-N-E" => {
  const has = (terminal: Terminal) => a === terminal || b === terminal;
  if (has("L") && has("N")) return "test-L-N";
  return has("L") ? "test-L-E" : "test-N-E";
};
