/** What was done to the two ends of a ring at its way. */
export const ringEndStates = ["joined", "released", "crossed", "crossed-wrongly"] as const;
/** Two terminals of a way. */
export const terminalPairs = ["L-N", "L-E", "N-E"] as const;

export type RingEndState = (typeof ringEndStates)[number];
export type TerminalPair = (typeof terminalPairs)[number];
