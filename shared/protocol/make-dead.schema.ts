import { z } from "zod";

/** Two terminals of the circuit that a voltage tester is put to. */
export const deadPairSchema = z.enum(["L-N", "L-E", "N-E"]);
const breaker = z.number().int().min(1).max(3);

/** What is done while a circuit is made dead: a breaker or padlock moved, a tester put down. */
export const deadActSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("chart") }),
  z.strictObject({ what: z.literal("breaker"), breaker }),
  z.strictObject({ what: z.literal("padlock"), breaker }),
  z.strictObject({ what: z.literal("proving-unit") }),
  z.strictObject({ what: z.literal("test"), between: deadPairSchema }),
]);

export type DeadPair = z.infer<typeof deadPairSchema>;
export type DeadAct = z.infer<typeof deadActSchema>;
