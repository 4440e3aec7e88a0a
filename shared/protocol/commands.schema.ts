import { z } from "zod";
import { languages } from "../text/languages.ts";
import { cableIdSchema, contactIdSchema, entryIdSchema, stationIdSchema } from "../board/ids.schema.ts";
import { deadActSchema } from "./make-dead.schema.ts";
import { testKinds } from "../wiring/wiring.schema.ts";

export const modes = ["practice", "assessed", "open-day"] as const;
export const attemptKinds = ["first", "resubmission", "retake", "re-sit"] as const;
export const steps = ["caution", "make-dead", "plan", "wire", "test", "load", "hand-in"] as const;

/** Make dead, in the order it is done before a lead is touched. */
export const deadSteps = [
  "identify",
  "isolate",
  "lock-off",
  "prove-tester",
  "test-L-N",
  "test-L-E",
  "test-N-E",
  "prove-tester-again",
] as const;

/** The questions of the design worksheet, in the order of the trade: current, device, cable, then the fuses of FCUs. */
export const planQuestions = [
  "designCurrentA",
  "deviceRatingA",
  "tabulatedCurrentA",
  "csaMm2",
  "fuseRatingA",
  "secondFuseRatingA",
] as const;

/** Settings a person may declare where no plug code says them. */
export const settingKeys = [
  "csaMm2",
  "deviceRatingA",
  "deviceCurve",
  "fuseRatingA",
  "switched",
  "ratingA",
] as const;

const none = z.strictObject({});

/** What the bench screen may ask of the server, by event name; one schema each. */
export const benchCommandSchemas = {
  "set-language": z.strictObject({ language: z.enum(languages) }),
  /** Large text on or off. */
  "set-large": z.strictObject({ isLarge: z.boolean() }),
  "sign-in": z.discriminatedUnion("by", [
    z.strictObject({ by: z.literal("name"), learner: z.string().min(1).max(64) }),
    z.strictObject({ by: z.literal("badge"), badge: z.string().min(1).max(64) }),
    z.strictObject({ by: z.literal("guest") }),
  ]),
  "sign-out": none,
  "start-attempt": z.strictObject({
    scenario: z.string().min(1).max(64),
    mode: z.enum(modes),
    kind: z.enum(attemptKinds).optional(),
    /** Somebody else's work that waits for a check is ended; asked of whoever starts. */
    endsWaiting: z.literal(true).optional(),
  }),
  "leave-attempt": none,
  "accept-caution": none,
  "go-to-step": z.strictObject({ step: z.enum(steps) }),
  /** Something done on the picture on which a circuit is made dead. */
  "dead-act": deadActSchema,
  /** The circuit is isolated and proved dead, as the learner says; assessed work. */
  "declare-dead": none,
  "answer-plan": z.strictObject({ question: z.enum(planQuestions), answer: z.number().positive() }),
  plug: z.strictObject({ contactA: contactIdSchema, contactB: contactIdSchema }),
  "plug-cable": z.strictObject({
    entryA: entryIdSchema,
    entryB: entryIdSchema,
    csaMm2: z.number().positive().optional(),
  }),
  pull: z.discriminatedUnion("what", [
    z.strictObject({ what: z.literal("lead"), contactA: contactIdSchema, contactB: contactIdSchema }),
    z.strictObject({ what: z.literal("cable"), cable: cableIdSchema }),
    z.strictObject({ what: z.literal("all") }),
  ]),
  /** Plugs what was found there, on the simulated board. */
  "match-as-found": none,
  undo: none,
  declare: z.strictObject({
    subject: z.union([cableIdSchema, stationIdSchema]),
    key: z.enum(settingKeys),
    value: z.union([z.number().positive(), z.string().max(20), z.boolean()]),
  }),
  "ask-verdict": none,
  "ask-hint": none,
  probe: z.strictObject({
    probe: z.enum(["red", "black"]),
    at: z.union([contactIdSchema, z.literal("other-probe"), z.null()]),
  }),
  "record-reading": z.strictObject({
    test: z.enum(testKinds),
    way: stationIdSchema,
    judged: z.enum(["pass", "fail"]),
  }),
  ready: none,
  /** No longer ready for check. */
  "take-back": none,
  "hand-in": none,
  "self-check": none,
  /** A walk along the board with a probe, on or off. */
  "walk-test": z.strictObject({ isOn: z.boolean() }),
  /** What a lead between two entries shows. Never while assessed work is open: it would tell of the wiring. */
  "test-lead": z.strictObject({ entryA: entryIdSchema, entryB: entryIdSchema }),
} as const;

export type BenchCommandName = keyof typeof benchCommandSchemas;
export type BenchCommand<Name extends BenchCommandName = BenchCommandName> = z.infer<
  (typeof benchCommandSchemas)[Name]
>;
export type Mode = (typeof modes)[number];
export type AttemptKind = (typeof attemptKinds)[number];
export type Step = (typeof steps)[number];
export type DeadStep = (typeof deadSteps)[number];
export type PlanQuestion = (typeof planQuestions)[number];
export type SettingKey = (typeof settingKeys)[number];
