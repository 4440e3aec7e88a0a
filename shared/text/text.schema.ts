import { z } from "zod";

/** A text per language of the bench; English is always there. */
export const textSchema = z.strictObject({ en: z.string().min(1), pl: z.string().min(1) });

export type Text = z.infer<typeof textSchema>;
