import { z } from "zod";
import { inOrder } from "../electrical/fault-name.ts";
import { coreCountOf, faultCores, hiddenFaultKinds } from "../wiring/hunt-words.ts";

/** A fault as a learner names it; with as many cores as one of its kind has. */
export const faultNameSchema = z
  .strictObject({
    kind: z.enum(hiddenFaultKinds),
    place: z.string().min(1).max(60),
    cores: z.array(z.enum(faultCores)).max(2),
  })
  .refine(
    ({ kind, cores }) => inOrder(cores).length === coreCountOf[kind],
    "that is not how many cores it has",
  );
