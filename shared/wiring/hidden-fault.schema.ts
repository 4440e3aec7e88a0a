import { z } from "zod";
import { csaMm2Schema, insulationMegohmSchema, resistanceOhmSchema } from "../board/quantities.schema.ts";
import { stationIdSchema } from "../board/ids.schema.ts";

/** A fault of a hunt: laid over what is sensed, seen by the meter and the load run alone. */
export const hiddenFaultSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("open-core"), cable: z.string(), role: z.enum(["L", "N", "E"]) }),
  z.strictObject({
    kind: z.literal("high-resistance"),
    cable: z.string(),
    role: z.enum(["L", "N", "E"]),
    resistanceOhm: resistanceOhmSchema,
  }),
  z.strictObject({
    kind: z.literal("crossed-cores"),
    cable: z.string(),
    roles: z.tuple([z.enum(["L", "N", "E"]), z.enum(["L", "N", "E"])]),
  }),
  z.strictObject({ kind: z.literal("wrong-cpc"), cable: z.string(), cpcCsaMm2: csaMm2Schema }),
  z.strictObject({
    kind: z.literal("missing-link"),
    station: stationIdSchema,
    role: z.enum(["L", "N", "E"]),
  }),
  z.strictObject({
    kind: z.literal("low-insulation"),
    cable: z.string(),
    between: z.tuple([z.enum(["L", "N", "E"]), z.enum(["L", "N", "E"])]),
    insulationMegohm: insulationMegohmSchema,
  }),
]);

export type HiddenFault = z.infer<typeof hiddenFaultSchema>;
