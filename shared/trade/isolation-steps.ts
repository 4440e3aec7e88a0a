import type { Source } from "./source.ts";

// Step by step in sparkyhub.co.uk/references/safe-isolation and plumbrevise.co.uk/revisions/safe-isolation-procedure.
const source: Source = {
  kind: "guidance",
  document: "HSE GS38 and the Electricity at Work Regulations 1989",
  clause: "regulation 13, safe isolation as trained",
  checked: "secondary copy",
};

/** A step of making a circuit dead. */
export type IsolationStep =
  | "identify"
  | "isolate"
  | "lock-off"
  | "prove-tester"
  | "test-line-neutral"
  | "test-line-earth"
  | "test-neutral-earth"
  | "prove-tester-again";

/**
 * Making dead, in order. The three tests at the point of work may come in any order among themselves, hence one
 * rank. The tester is proved before and after them, or its silence proves nothing.
 */
export const isolationSteps: readonly { step: IsolationStep; rank: number; source: Source }[] = [
  { step: "identify", rank: 1, source },
  { step: "isolate", rank: 2, source },
  { step: "lock-off", rank: 3, source },
  { step: "prove-tester", rank: 4, source },
  { step: "test-line-neutral", rank: 5, source },
  { step: "test-line-earth", rank: 5, source },
  { step: "test-neutral-earth", rank: 5, source },
  { step: "prove-tester-again", rank: 6, source },
];
