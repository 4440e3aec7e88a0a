import { z } from "zod";
import { contactIdSchema, entryIdSchema, stationIdSchema } from "../../shared/board/ids.schema.ts";
import type { CableId, ConductorId, StationId } from "../../shared/board/ids.ts";
import { boardFaultSchema } from "../../shared/board/sensed-state.schema.ts";
import {
  attemptKinds,
  endReasons,
  deadSteps,
  modes,
  planQuestions,
  settingKeys,
  steps,
} from "../../shared/protocol/attempt-words.ts";
import { deadActSchema } from "../../shared/protocol/make-dead.schema.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { faultNameSchema } from "../../shared/protocol/fault-name.schema.ts";
import { meterActSchema } from "../../shared/protocol/meter.schema.ts";
import { textSchema } from "../../shared/text/text.schema.ts";
import { powerWSchema, readingOhmSchema } from "../../shared/board/quantities.schema.ts";
import { liveTests } from "../../shared/electrical/check-live-reading.ts";
import { hiddenFaultSchema } from "../../shared/wiring/hidden-fault.schema.ts";
import { readingSchema, testKinds } from "../../shared/wiring/wiring.schema.ts";

const join = z.string().transform((text) => text as ConductorId);
const codes = z.array(z.strictObject({ entry: entryIdSchema, code: z.number().int() }));
const plugged = z.strictObject({ joins: z.array(join), codes, unknown: z.array(contactIdSchema) });
const change = {
  added: z.array(join),
  removed: z.array(join),
  codes: codes.optional(),
  unknown: z.array(contactIdSchema).optional(),
};
/** Stored whole for whoever reads the log; judged verdicts are made by this program alone. */
const verdict = z.custom<Verdict>((value) => typeof value === "object" && value !== null);
/** Of the wiring that was judged, so that whoever judges again knows that it is the same. */
const wiringHash = z.string();
const none = z.strictObject({});
/** What a live test showed, or what was written down of it. */
const liveValue = {
  impedanceOhm: readingOhmSchema.optional(),
  currentA: z.number().min(0).max(1_000_000).optional(),
  tripMs: z.number().min(0).max(100_000).optional(),
  /** Above what the meter shows. */
  isOverRange: z.boolean().optional(),
  /** The RCD held. */
  isNoTrip: z.boolean().optional(),
};

/** Where a setting comes from. */
export const settingSources = ["sensed", "learner", "trainer", "scenario"] as const;
export type SettingSource = (typeof settingSources)[number];

/** The content of every event of an attempt, by its name in the log. */
export const attemptEventSchemas = {
  "attempt-started": z.strictObject({
    scenario: z.string(),
    scenarioRevision: z.number(),
    scenarioHash: z.string(),
    board: z.string(),
    boardHash: z.string(),
    rulePackVersion: z.string(),
    softwareVersion: z.string(),
    /** Opaque; null for a guest. */
    learner: z.string().nullable(),
    kind: z.enum(attemptKinds),
    mode: z.enum(modes),
    isExistingCircuit: z.boolean(),
  }),
  "caution-accepted": none,
  /** `isWaiting`: still ready for check. Rows without it are from before a look at a step left the waiting list alone. */
  "step-entered": z.strictObject({
    step: z.enum(steps),
    isWaiting: z.literal(true).optional(),
    /** What the scan found on the board when assessed work on it began. */
    begunOn: z.enum(["clear-board", "as-found"]).optional(),
  }),
  /** Written until making dead was acted on a picture; read for ever. */
  "dead-step": z.strictObject({ step: z.enum(deadSteps), isOutOfOrder: z.boolean() }),
  /** `breaker` is the one that the circuit chart names. */
  "dead-acted": z.strictObject({ act: deadActSchema, breaker: z.number().int() }),
  /** The learner says that the circuit is isolated and proved dead; assessed work, where no list is kept for them. */
  "dead-declared": none,
  "plan-answered": z.strictObject({ question: z.enum(planQuestions), answer: z.number() }),
  /** `full` at the start, when the attempt is resumed, at ready and at hand-in, and after every 50 changes. */
  sensed: z.strictObject({ ...change, full: plugged.optional() }),
  "changed-while-off": z.strictObject({ ...change, full: plugged }),
  /** `value` null: the setting ended. */
  setting: z.strictObject({
    subject: z.string().transform((text) => text as CableId | StationId),
    key: z.enum(settingKeys),
    value: z.union([z.number(), z.string(), z.boolean()]).nullable(),
    by: z.enum(settingSources),
  }),
  "board-fault": z.strictObject({ faults: z.array(boardFaultSchema) }),
  "clock-jumped": z.strictObject({ expectedWallMs: z.number(), wallMs: z.number() }),
  "verdict-asked": z.strictObject({ isTry: z.boolean(), wiringHash, verdict }),
  "hint-given": z.strictObject({ number: z.number().int(), text: textSchema }),
  /** `ends`, `nulledOhm` and `tripMs` are what was worked out then: the ends taken out, the leads, the RCD's time. */
  "meter-acted": z.strictObject({
    act: meterActSchema,
    ends: z.tuple([entryIdSchema, entryIdSchema]).optional(),
    nulledOhm: readingOhmSchema.optional(),
    tripMs: z.number().optional(),
  }),
  "reading-recorded": readingSchema,
  /** What is hidden in the circuit of a hunt: by the scenario, or drawn by its level from the seed. */
  "faults-hidden": z.strictObject({
    faults: z.array(hiddenFaultSchema),
    seed: z.number().int().optional(),
  }),
  /** A trainer hid one more while the work was open; `person` is theirs. */
  "fault-set": z.strictObject({ fault: hiddenFaultSchema, person: z.string() }),
  /** A trainer took back one that a trainer hid. */
  "fault-unset": z.strictObject({ name: faultNameSchema, person: z.string() }),
  /** A cable was out long enough to be another: what was hidden in it is gone. */
  "hidden-fault-ended": z.strictObject({ cable: z.string().transform((text) => text as CableId) }),
  /** The reading before it is not what it would be without these hidden faults, by their place in the row. */
  "faults-shown": z.strictObject({ faults: z.array(z.number().int().min(0)).min(1) }),
  /** The learner says what is wrong and where, or takes that back. */
  "fault-named": z.strictObject({ name: faultNameSchema, isTakenBack: z.literal(true).optional() }),
  /** The learner asked what a reading should come to. */
  "expected-asked": z.strictObject({
    test: z.enum([...testKinds, ...liveTests]),
    of: z.string().max(60),
  }),
  /** The way was switched on; `outcome` says whether it holds or what opened at once. */
  energised: z.strictObject({
    way: stationIdSchema,
    outcome: z.enum(["holds", "device-trips", "rcd-trips"]),
  }),
  "switched-off": z.strictObject({ way: stationIdSchema }),
  /** At the step Load: an appliance at a point was switched, so many seconds into the run. */
  "appliance-switched": z.strictObject({
    appliance: z.string().max(80),
    station: stationIdSchema,
    powerW: powerWSchema,
    isOn: z.boolean(),
    atS: z.number().min(0),
  }),
  /** The moment of the run that is looked at. */
  "load-clock-moved": z.strictObject({ toS: z.number().min(0) }),
  /** The run begins anew with everything off. */
  "load-run-cleared": none,
  /** The cable whose temperature is looked at. */
  "load-cable-chosen": z.strictObject({ cable: z.string().transform((text) => text as CableId) }),
  "live-reading-recorded": z.strictObject({
    test: z.enum(liveTests),
    way: stationIdSchema,
    red: contactIdSchema.optional(),
    black: contactIdSchema.optional(),
    ...liveValue,
    judged: z.enum(["pass", "fail"]),
    /** What the meter showed. */
    shown: z.strictObject(liveValue),
  }),
  ready: z.strictObject({ full: plugged, wiringHash, verdict }),
  /** No longer ready for check: the learner took it back, or the board is not what it was. */
  "ready-ended": z.strictObject({ reason: z.enum(["taken-back", "board-changed"]) }),
  "handed-in": z.strictObject({
    full: plugged,
    wiringHash,
    verdict,
    tryCount: z.number().int(),
    /** What a hunt came to. */
    hunt: z.strictObject({ points: z.number().int(), mostPoints: z.number().int() }).optional(),
  }),
  /** `full` is what the board was when the bench came back. */
  resumed: z.strictObject({ full: plugged, isTrainerNeeded: z.boolean() }),
  /** A trainer has looked and lets assessed work go on that the bench was off in the middle of. */
  "resume-confirmed": z.strictObject({ person: z.string() }),
  /** `ended`: by one of the staff, who it was and why. */
  "attempt-left": z.strictObject({
    reason: z.enum(["left", "another-started", "ended"]),
    person: z.string().optional(),
    /** `next-group`: a trainer made the bench ready for the next group. */
    why: z.enum([...endReasons, "next-group"]).optional(),
  }),
} as const;

export type AttemptEventType = keyof typeof attemptEventSchemas;
export type AttemptEvent = {
  [Type in AttemptEventType]: { type: Type; content: z.infer<(typeof attemptEventSchemas)[Type]> };
}[AttemptEventType];

/** A live reading on record. */
export type LiveReading = z.infer<(typeof attemptEventSchemas)["live-reading-recorded"]>;
