import { z } from "zod";
import { textSchema } from "../text/text.schema.ts";
import { hiddenFaultSchema } from "../wiring/hidden-fault.schema.ts";
import { huntLevels } from "../wiring/hunt-words.ts";
import { stationIdSchema } from "../board/ids.schema.ts";
import { sides, stationKinds } from "../board/station-kinds.ts";
import { ruleIds } from "../rules/rule.ts";
import {
  cableSchema,
  loadSchema,
  readingSchema,
  requirementSchema,
  routeSchema,
  supplySchema,
} from "../wiring/wiring.schema.ts";
import { stationSettingsSchema } from "../board/station-settings.schema.ts";

/** Positions on the plan in grid steps of 0.1 m, from the top left. */
const step = z.number().int().min(0).max(1000);
const pointSchema = z.strictObject({ x: step, y: step });

export const planSchema = z.strictObject({
  width: step,
  height: step,
  rooms: z.array(z.strictObject({ name: textSchema, x: step, y: step, width: step, height: step })),
  /** How cables may be run; every wall names one. */
  routeClasses: z.record(z.string(), routeSchema),
  /** Wall segments cables can follow, ceilings and floors included. */
  walls: z
    .array(
      z.strictObject({
        from: pointSchema,
        to: pointSchema,
        routeClass: z.string(),
        /** What carries the run; only a wall is drawn as one. Left out: a wall. */
        as: z.enum(["wall", "floor", "ceiling"]).optional(),
      }),
    )
    .min(1),
  places: z.array(z.strictObject({ station: stationIdSchema, at: pointSchema })).min(2),
  /** Where length or way of running between two stations is not what the walls say. */
  overrides: z
    .array(
      z.strictObject({
        a: stationIdSchema,
        b: stationIdSchema,
        lengthM: z.number().positive().optional(),
        ...routeSchema.shape,
      }),
    )
    .optional(),
});

/** Cables and settings as one state of the board; of an answer also what is put on record and named. */
export const builtSchema = z.strictObject({
  settings: z.record(z.string(), stationSettingsSchema).optional(),
  cables: z.array(cableSchema),
  readings: z.array(readingSchema).optional(),
  /** Hidden faults that are named rightly, by the names of the requirement. */
  namedFaults: z.array(z.string()).optional(),
});

/** A load of a wiring, named in each language of the bench. */
const scenarioLoadSchema = z.strictObject({ ...loadSchema.shape, name: textSchema.optional() });

/** What a learner may fit in this scenario. */
export const partsSchema = z.strictObject({
  cableCsaMm2: z.array(z.number().positive()).min(1),
  deviceRatingA: z.array(z.number().positive()).optional(),
  fuseRatingA: z.array(z.number().positive()).optional(),
});

export const scenarioSchema = z.strictObject({
  version: z.literal(1),
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  /** Counts up when the scenario changes. */
  revision: z.number().int().min(1),
  title: textSchema,
  /** The house of our own it stands in. */
  place: textSchema,
  level: z.number().int().min(1).max(5),
  teaches: textSchema,
  /** A line or two on the house, then what is asked for, each on a line of its own that begins "1. ". */
  task: textSchema,
  /** True where there is an existing circuit: make dead comes before any lead. */
  isExistingCircuit: z.boolean(),
  supply: supplySchema,
  /** The stations it uses, what the board must have at each, and what is fixed there. */
  stations: z
    .array(
      z.strictObject({
        id: stationIdSchema,
        kind: z.enum(stationKinds),
        name: textSchema.optional(),
        /** Entries a side that the board must have at least. */
        entries: z.partialRecord(z.enum(sides), z.number().int().min(1)),
        settings: stationSettingsSchema.optional(),
        /** Settings the learner chooses; not fixed above. */
        chosen: z
          .array(z.enum(["deviceRatingA", "deviceCurve", "fuseRatingA", "switched", "ratingA"]))
          .optional(),
      }),
    )
    .min(2),
  plan: planSchema,
  loads: z.array(scenarioLoadSchema),
  parts: partsSchema,
  requirements: z.array(requirementSchema).min(1),
  /**
   * What the task asks for: each numbered line of its text with the requirements, by index, that hold it. Scenarios of
   * old logs have none.
   */
  asks: z
    .array(
      z.strictObject({
        number: z.number().int().min(1),
        heldBy: z.array(z.number().int().min(0)).min(1),
      }),
    )
    .min(1)
    .optional(),
  asFound: builtSchema,
  /** Worded nudges a trainer gives, first to last; the last names a place. */
  hints: z.array(textSchema).max(3).optional(),
  /** At least one right wiring; never compared with what a learner builds, only used to prove the task solvable. */
  modelAnswers: z.array(builtSchema).min(1),
  wrongAnswers: z
    .array(
      z.strictObject({
        name: z.string().min(1),
        built: builtSchema,
        /** Exactly the findings of weight danger, fix or query it must give. */
        findings: z.array(z.strictObject({ rule: z.enum(ruleIds), variant: z.string().optional() })),
        /** Requirements, by index, that it does not meet. */
        notMet: z.array(z.number().int().min(0)).optional(),
      }),
    )
    .min(2),
  hiddenFaults: z.array(hiddenFaultSchema).optional(),
  /** Other hidden faults at each go, drawn by a level. */
  drawnFaults: z.strictObject({ level: z.union(huntLevels.map((level) => z.literal(level))) }).optional(),
});

/** A scenario that is still being made: what it asks for and its answers may come later. */
export const draftSchema = scenarioSchema.extend({
  requirements: z.array(requirementSchema),
  asks: z
    .array(
      z.strictObject({ number: z.number().int().min(1), heldBy: z.array(z.number().int().min(0)).min(1) }),
    )
    .optional(),
  modelAnswers: z.array(builtSchema),
  wrongAnswers: z.array(scenarioSchema.shape.wrongAnswers.element),
});

/** What the bench screen may see of a scenario: no answers, no faults, no hints. */
export const strippedScenarioSchema = scenarioSchema.omit({
  modelAnswers: true,
  wrongAnswers: true,
  hiddenFaults: true,
  drawnFaults: true,
  hints: true,
});

export type Plan = z.infer<typeof planSchema>;
export type Built = z.infer<typeof builtSchema>;
export type Scenario = z.infer<typeof scenarioSchema>;
export type StrippedScenario = z.infer<typeof strippedScenarioSchema>;
