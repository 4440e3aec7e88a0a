import { z } from "zod";
import { stationSettingsSchema } from "./station-settings.schema.ts";
import { roleSchema, stationIdSchema } from "./ids.schema.ts";
import { cores, sides, stationKinds } from "./station-kinds.ts";

/** A line's index: which output and input of the chain, or which pin of a direct board. */
const line = z.number().int().min(0).max(1023);
const bcm = z.number().int().min(0).max(53);
/** What a line is made of, where it is not the usual 10 kΩ and 1 nF at most: a released line is given time by it. */
const lineElectrics = z.strictObject({
  pullUpOhm: z.number().min(1_000).max(100_000),
  capacitancePf: z.number().min(0).max(10_000).describe("of a line with the longest lead in"),
});
const linesByRole = z.partialRecord(roleSchema, line);

export const boardEntrySchema = z.strictObject({
  letter: z.string().regex(/^[a-z][a-z0-9]*$/),
  side: z.enum(sides),
  lines: linesByRole,
  /** Code contacts of the entry, as positions in the code chain, least significant first. */
  codeContacts: z.array(line).optional(),
});

export const boardStationSchema = z.strictObject({
  id: stationIdSchema,
  kind: z.enum(stationKinds),
  label: z.string().min(1).max(24),
  /** Where it stands on the face of the board, as fractions of its width and height. */
  face: z.strictObject({
    x: z.number().min(0).max(1),
    y: z.number().min(0).max(1),
    width: z.number().positive().max(1),
    height: z.number().positive().max(1),
  }),
  entries: z.array(boardEntrySchema).min(1),
  front: linesByRole.optional(),
  /** What is fixed on this board, such as two gangs. */
  settings: stationSettingsSchema.optional(),
});

/** What a coded plug says of its cable. */
export const cableCodeSchema = z.strictObject({
  code: z.number().int().min(1),
  csaMm2: z.number().positive(),
  cores: z.array(z.enum(cores)).min(1),
});

/** Description of a mock board: its stations, its lines, and the pins of the Raspberry Pi (BCM numbers). */
export const boardSchema = z.strictObject({
  version: z.literal(1),
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  name: z.string().min(1).max(60),
  wiring: z.discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("chain"),
      pins: z.strictObject({
        shiftClock: bcm,
        dataOut: bcm,
        latch: bcm,
        load: bcm,
        dataIn: bcm,
        outputEnable: bcm.optional(),
        codeIn: bcm.optional(),
      }),
      lineCount: line,
      codeCount: line.optional(),
      electrics: lineElectrics.optional(),
    }),
    z.strictObject({
      kind: z.literal("direct"),
      pins: z.array(bcm).min(2).describe("pin of line i"),
      electrics: lineElectrics.optional(),
    }),
  ]),
  codes: z.array(cableCodeSchema).optional(),
  stations: z.array(boardStationSchema).min(2),
  probes: z.strictObject({ red: line, black: line }).optional(),
});

export type BoardDescription = z.infer<typeof boardSchema>;
export type BoardStation = z.infer<typeof boardStationSchema>;
export type BoardEntry = z.infer<typeof boardEntrySchema>;
export type CableCode = z.infer<typeof cableCodeSchema>;
