import { z } from "zod";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { attemptKinds } from "../../shared/protocol/attempt-words.ts";
import {
  criterionAnswers,
  outcomes,
  proposals,
  reviewAnswers,
} from "../../shared/protocol/decision-words.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { eventOfBytes } from "../store/event-bytes.ts";

/** Whoever did it, by their opaque id; their session stands in the event's author. */
const person = z.string();
const said = z.string();

/** The four ticks an assessor gives the evidence for a criterion. */
export const tickShape = {
  isValid: z.boolean(),
  isAuthentic: z.boolean(),
  isCurrent: z.boolean(),
  isSufficient: z.boolean(),
};

const judgedCriterion = z.strictObject({
  criterion: z.string(),
  /** What the bench proposed for it; null where only a person can say. */
  proposed: z.enum(proposals).nullable(),
  answer: z.enum(criterionAnswers),
  ...tickShape,
  /** Why it is not as proposed, or cannot be assessed. */
  reason: said.optional(),
});
const judged = {
  /** The document with the texts of the criteria, as they were then. */
  criteriaHash: z.string(),
  criteria: z.array(judgedCriterion),
};

/** What people add to an attempt that was handed in, by its name in the log. Read for ever. */
export const deskEventSchemas = {
  /** The learner says that the work is their own. */
  "own-work-declared": z.strictObject({}),
  observed: z.strictObject({ person, seen: said, observerSays: said, learnerSays: said }),
  decided: z.strictObject({
    person,
    ...judged,
    outcome: z.enum(outcomes),
    says: said,
    /** What the learner may do next at this task. */
    nextKind: z.enum(attemptKinds).optional(),
    /** The hash of the decision's row that this one corrects, and why. */
    corrects: z.strictObject({ hash: z.string(), why: said }).optional(),
  }),
  /** The last decision stands; the bench's signature follows. */
  "decision-sealed": z.strictObject({ person, decision: z.string() }),
  /** The learner may see the last decision from now on. */
  released: z.strictObject({ person, decision: z.string() }),
  reviewed: z.strictObject({ person, decision: z.string(), answer: z.enum(reviewAnswers), says: said }),
  /** Somebody else's answers, given without having been shown the decision. */
  "second-viewed": z.strictObject({ person, ...judged }),
  /** A decision that was released stood on the bench's screen before its learner for the first time. */
  "decision-seen": z.strictObject({ decision: z.string() }),
  /** One of the staff was shown what was decided up to then, at the desk or in a file; only of who could still give a blind view. */
  "decision-shown": z.strictObject({ person }),
} as const;

export type DeskEventType = keyof typeof deskEventSchemas;
export type DeskContent<Type extends DeskEventType> = z.infer<(typeof deskEventSchemas)[Type]>;
export type DeskEvent = {
  [Type in DeskEventType]: { type: Type; content: DeskContent<Type> };
}[DeskEventType];
export type JudgedCriterion = z.infer<typeof judgedCriterion>;

const isDeskEvent = (type: string): type is DeskEventType => Object.hasOwn(deskEventSchemas, type);

/** What a row of the log tells of the desk; undefined for any other row and for one that cannot be read. */
export function deskEventOfRow(row: Pick<LogRow, "type" | "bytes">): DeskEvent | undefined {
  if (!isDeskEvent(row.type)) return undefined;
  try {
    const parsed = parseSafely<object>(deskEventSchemas[row.type], eventOfBytes(row.bytes).content);
    return parsed.success ? ({ type: row.type, content: parsed.data } as DeskEvent) : undefined;
  } catch {
    return undefined;
  }
}
