import { z } from "zod";
import {
  cableIdSchema,
  contactIdSchema,
  entryIdSchema,
  roleSchema,
  stationIdSchema,
} from "../board/ids.schema.ts";
import {
  csaMm2Schema,
  currentASchema,
  depthMmSchema,
  insulationMegohmSchema,
  lengthMSchema,
  powerWSchema,
  readingOhmSchema,
  resistanceOhmSchema,
} from "../board/quantities.schema.ts";
import { sides, stationKinds } from "../board/station-kinds.ts";
import { stationSettingsSchema } from "../board/station-settings.schema.ts";
import { ringEndStates, terminalPairs } from "./test-words.ts";

export const referenceMethods = ["A", "C", "100", "101", "102", "103"] as const;
export const earthings = ["TN-C-S", "TN-S", "TT"] as const;

export const stationSchema = z.strictObject({
  id: stationIdSchema,
  kind: z.enum(stationKinds),
  /** Printed label, such as "3"; the kind's word is added by whoever writes a sentence. */
  label: z.string().max(24).optional(),
  /** Its entries. Left out, a station has the usual entries of its kind. */
  entries: z
    .array(z.strictObject({ letter: z.string().regex(/^[a-z][a-z0-9]*$/), side: z.enum(sides) }))
    .optional(),
  settings: stationSettingsSchema.optional(),
});

/** How a cable is run, by itself or as a route class of a plan. */
export const routeSchema = z.strictObject({
  method: z.enum(referenceMethods).optional(),
  ambientC: z.number().min(-10).max(60).optional(),
  /** Circuits bunched together, this one included. */
  groupedCircuits: z.number().int().min(1).max(20).optional(),
  /** Length of cable totally surrounded by thermal insulation. */
  insulationMm: depthMmSchema.optional(),
  /** Depth in the wall; under 50 mm asks for an RCD. Left out: on the surface or deeper. */
  depthMm: depthMmSchema.optional(),
  inMetalFramedWall: z.boolean().optional(),
});

export const cableSchema = z.strictObject({
  from: entryIdSchema,
  to: entryIdSchema,
  csaMm2: csaMm2Schema.optional(),
  /** Left out: the usual protective conductor of that size. */
  cpcCsaMm2: csaMm2Schema.optional(),
  lengthM: lengthMSchema.optional(),
  ...routeSchema.shape,
  /**
   * Which position at `from` meets which at `to`. Left out: every core straight, core by core. States single
   * conductors left out, crossed or on another route.
   */
  conductors: z.array(z.tuple([roleSchema, roleSchema])).optional(),
});

export const loadSchema = z.strictObject({
  station: stationIdSchema,
  powerW: powerWSchema,
  /** Runs for hours at a time. */
  isLongRunning: z.boolean().optional(),
  name: z.string().max(40).optional(),
});

export const testKinds = [
  "continuity-cpc",
  "ring-step-1",
  "ring-step-2",
  "ring-step-3",
  "insulation",
  "polarity",
] as const;

/** What stands between line and neutral of a point and can be left in while it is tested. */
export const leftInPartSchema = z.strictObject({
  station: stationIdSchema,
  part: z.enum(["load", "lamp", "neon", "electronics"]),
});

/** How a reading was taken: what had been done at the meter, at the way and at the points. */
export const takenSchema = z.strictObject({
  ringEnds: z.enum(ringEndStates),
  /** The conductor that line was crossed with. */
  crossedWith: z.enum(["N", "E"]).optional(),
  /** Terminals of the way that a link joined. */
  linkedAtWay: z.enum(terminalPairs).optional(),
  /** What the meter was nulled to; 0 where nobody nulled it. */
  nulledOhm: readingOhmSchema,
  hasLongLead: z.boolean().optional(),
  testV: z.number().positive().max(1000).optional(),
  partsIn: z.array(leftInPartSchema).optional(),
});

/** What a meter showed. */
export const shownSchema = z.strictObject({
  resistanceOhm: readingOhmSchema.optional(),
  insulationMegohm: insulationMegohmSchema.optional(),
  isOverRange: z.boolean().optional(),
});

/** A reading the learner put on record, in the order they were taken. */
export const readingSchema = z.strictObject({
  test: z.enum(testKinds),
  way: stationIdSchema,
  /** Where the red and the black probe stood. */
  red: contactIdSchema.optional(),
  black: contactIdSchema.optional(),
  resistanceOhm: readingOhmSchema.optional(),
  insulationMegohm: insulationMegohmSchema.optional(),
  /** Above what the meter shows: ">1999" ohm or ">999" megohm. */
  isOverRange: z.boolean().optional(),
  isPolarityRight: z.boolean().optional(),
  /** What the learner said of it. */
  judged: z.enum(["pass", "fail"]).optional(),
  /** What the meter showed then. Left out: what is on record. */
  shown: shownSchema.optional(),
  /** Left out: nobody knows, and the places of the probes alone tell. */
  taken: takenSchema.optional(),
});

/** What a task asks for. Never named cables of an answer, but for as-found cables that must stay. */
export const requirementSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("served"), stations: z.array(stationIdSchema).min(1) }),
  z.strictObject({
    kind: z.literal("one-circuit"),
    stations: z.array(stationIdSchema).min(1),
    way: stationIdSchema.optional(),
  }),
  z.strictObject({ kind: z.literal("shape"), of: stationIdSchema, shape: z.enum(["ring", "radial"]) }),
  /** In the ring itself, not on a branch from it. */
  z.strictObject({ kind: z.literal("in-ring"), stations: z.array(stationIdSchema).min(1) }),
  /** Each alone on a spur without a fuse. */
  z.strictObject({ kind: z.literal("unfused-spur"), stations: z.array(stationIdSchema).min(1) }),
  /** Behind the fuse of an FCU: of any, or of the one that is named. */
  z.strictObject({
    kind: z.literal("through-fcu"),
    stations: z.array(stationIdSchema).min(1),
    fcu: stationIdSchema.optional(),
  }),
  /** Switched off, each or all together, with nothing else going off; by any switch, or by the one that is named. */
  z.strictObject({
    kind: z.literal("own-switch"),
    stations: z.array(stationIdSchema).min(1),
    by: stationIdSchema.optional(),
  }),
  /** A fuse before each that is no larger than the task allows. */
  z.strictObject({
    kind: z.literal("fuse"),
    stations: z.array(stationIdSchema).min(1),
    mostA: currentASchema,
  }),
  /** Device, load and cables of the circuit of a way go together. */
  z.strictObject({ kind: z.literal("sized"), way: stationIdSchema }),
  /** No new cable is larger than it needs to be by more than the spare sizes: one where none is stated. */
  z.strictObject({
    kind: z.literal("thrift"),
    /** The sizes there are to choose from. */
    csaMm2: z.array(currentASchema).min(2),
    spareSizes: z.number().int().min(0).max(1).optional(),
  }),
  z.strictObject({ kind: z.literal("kept"), cables: z.array(cableIdSchema).min(1) }),
  z.strictObject({
    kind: z.literal("device"),
    way: stationIdSchema,
    ratingA: z.array(currentASchema).min(1),
  }),
  z.strictObject({
    kind: z.literal("readings"),
    way: stationIdSchema,
    tests: z.array(z.enum(testKinds)).min(1),
  }),
  z.strictObject({ kind: z.literal("fault-named"), faults: z.array(z.string().min(1)).min(1) }),
]);

export const supplySchema = z.strictObject({
  earthing: z.enum(earthings).optional(),
  zeOhm: resistanceOhmSchema.optional(),
  /** Resistance of the earth electrode (TT). */
  electrodeOhm: resistanceOhmSchema.optional(),
});

/** The one file format for a wiring: what is built, and all that a rule may need to judge it. */
export const wiringSchema = z.strictObject({
  version: z.literal(1),
  title: z.string().max(200).optional(),
  supply: supplySchema.optional(),
  stations: z.array(stationSchema).max(400),
  cables: z.array(cableSchema).max(4000),
  loads: z.array(loadSchema).optional(),
  /** Contacts whose state the board cannot tell: never "unplugged". */
  unknown: z.array(contactIdSchema).optional(),
  /** What is asked for. Without it only what is built is judged. */
  wants: z.array(requirementSchema).optional(),
  /** The stations the task uses. Left out: all. */
  taskStations: z.array(stationIdSchema).optional(),
  readings: z.array(readingSchema).optional(),
  /** Faults of a hunt that the learner has named. */
  namedFaults: z.array(z.string()).optional(),
});

export type Station = z.infer<typeof stationSchema>;
export type Route = z.infer<typeof routeSchema>;
export type CableSpec = z.infer<typeof cableSchema>;
export type Load = z.infer<typeof loadSchema>;
export type TestKind = (typeof testKinds)[number];
export type Reading = z.infer<typeof readingSchema>;
export type Taken = z.infer<typeof takenSchema>;
export type Shown = z.infer<typeof shownSchema>;
export type LeftInPart = z.infer<typeof leftInPartSchema>;
export type Requirement = z.infer<typeof requirementSchema>;
export type Supply = z.infer<typeof supplySchema>;
export type Wiring = z.infer<typeof wiringSchema>;
export type ReferenceMethod = (typeof referenceMethods)[number];
export type Earthing = (typeof earthings)[number];
