import { z } from "zod";
import { contactIdSchema, entryIdSchema, stationIdSchema } from "./ids.schema.ts";

export const boardFaultKinds = [
  "stuck-low",
  "stuck-high",
  "dead-output",
  "dead-input",
  "no-answer",
  "outputs-tied",
  "loose-contact",
  "open-chain",
  "wrong-length",
  "swapped-pins",
  "code-without-cable",
  "unknown-code",
  "codes-differ",
  "group-too-large",
  "no-board",
  "noisy-board",
  "doubtful-lead",
  "probe-down",
  "no-tie",
  "wrong-order",
] as const;

/** Something wrong with the mock board itself, by station and contact; never part of what a learner wired. */
export const boardFaultSchema = z.strictObject({
  kind: z.enum(boardFaultKinds),
  station: stationIdSchema.optional(),
  contacts: z.array(contactIdSchema),
  facts: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
});

/** What a probe touches: a contact or test face, the other probe, or nothing. */
const probe = z.union([contactIdSchema, z.literal("other-probe"), z.null()]);

/** One whole picture of the board as the scanner sees it. */
export const sensedStateSchema = z.strictObject({
  boardId: z.string(),
  /** Counts up by one with each state that differs. */
  revision: z.number().int().min(0),
  /** Monotonic time of the reading that showed it. */
  monotonicMs: z.number(),
  /** Contacts joined together, two or more a group, each sorted, groups sorted by their first. */
  groups: z.array(z.array(contactIdSchema).min(2)),
  codes: z.array(z.strictObject({ entry: entryIdSchema, code: z.number().int().min(1) })),
  /** Contacts whose state cannot be told. */
  unknown: z.array(contactIdSchema),
  probes: z.strictObject({ red: probe, black: probe }),
  faults: z.array(boardFaultSchema),
  /** False while something changed so lately that a plug may be half in. */
  isSettled: z.boolean(),
});

export type BoardFault = z.infer<typeof boardFaultSchema>;
export type BoardFaultKind = (typeof boardFaultKinds)[number];
export type SensedState = z.infer<typeof sensedStateSchema>;
