import { z } from "zod";
import { criterionAnswers } from "../../shared/protocol/decision-words.ts";
import { tickShape } from "../desk/desk-events.ts";

/** What the acts of the desk are sent in common. */
export const attemptIdSchema = z.string().min(1).max(64);
export const saidSchema = z.string().trim().max(2000);

export const answersSchema = z
  .array(
    z.strictObject({
      criterion: z.string().min(1).max(64),
      answer: z.enum(criterionAnswers),
      ...tickShape,
      reason: saidSchema.optional(),
    }),
  )
  .max(60);
