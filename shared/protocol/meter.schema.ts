import { z } from "zod";
import { contactIdSchema, stationIdSchema } from "../board/ids.schema.ts";
import { ringEndStates, terminalPairs } from "../wiring/test-words.ts";
import { leftInPartSchema } from "../wiring/wiring.schema.ts";
import { meterFunctions, rcdMultiples, testVoltages } from "./meter-words.ts";

/** Something done at the meter, at the way of the circuit or at its points. */
export const meterActSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("dial"), to: z.enum(meterFunctions) }),
  z.strictObject({ what: z.literal("test-voltage"), testV: z.literal(testVoltages) }),
  z.strictObject({ what: z.literal("rcd-multiple"), multiple: z.literal(rcdMultiples) }),
  z.strictObject({
    what: z.literal("probe"),
    probe: z.enum(["red", "black"]),
    at: z.union([contactIdSchema, z.literal("other-probe"), z.null()]),
  }),
  z.strictObject({ what: z.literal("null") }),
  z.strictObject({ what: z.literal("long-lead"), isIn: z.boolean() }),
  /** The test key, of the functions that want one. */
  z.strictObject({ what: z.literal("press") }),
  z.strictObject({
    what: z.literal("ring-ends"),
    state: z.enum(ringEndStates),
    with: z.enum(["N", "E"]).optional(),
  }),
  z.strictObject({ what: z.literal("link"), between: z.enum(terminalPairs).nullable() }),
  z.strictObject({ what: z.literal("part"), ...leftInPartSchema.shape, isIn: z.boolean() }),
  z.strictObject({
    what: z.literal("switch"),
    station: stationIdSchema,
    position: z.union([z.literal(0), z.literal(1)]),
  }),
]);

export type MeterAct = z.infer<typeof meterActSchema>;
