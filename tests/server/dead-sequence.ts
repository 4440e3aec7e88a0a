import type { DeadAct } from "../../shared/protocol/make-dead.schema.ts";

/** Making a circuit dead, act by act as GS38 has it, on the breaker that the chart names for way 1. */
export const deadSequence: readonly DeadAct[] = [
  { what: "chart" },
  { what: "breaker", breaker: 1 },
  { what: "padlock", breaker: 1 },
  { what: "proving-unit" },
  { what: "test", between: "L-N" },
  { what: "test", between: "L-E" },
  { what: "test", between: "N-E" },
  { what: "proving-unit" },
];

/** The same on the breaker of another way, as the chart of its task names it. */
export const deadSequenceOn = (breaker: number): DeadAct[] =>
  deadSequence.map((act) => ("breaker" in act ? { ...act, breaker } : act));
