import { z } from "zod";
import {
  currentASchema,
  distanceMSchema,
  energyA2sSchema,
  floorAreaM2Schema,
  litresSchema,
  residualMaSchema,
} from "./quantities.schema.ts";
import { applianceKinds, switchings } from "./station-kinds.ts";

export const deviceStandards = ["BS EN 60898", "BS EN 61009", "BS 88-3", "BS 3036"] as const;
export const curves = ["B", "C", "D"] as const;

/**
 * What is set at a station. Every key is optional: a rule that needs one that is not said answers
 * `undetermined`, but for the defaults that shared/circuit/defaults.ts lists with their reasons.
 */
export const stationSettingsSchema = z.strictObject({
  // way
  deviceStandard: z.enum(deviceStandards).optional(),
  deviceCurve: z.enum(curves).optional(),
  deviceRatingA: currentASchema.optional(),
  /** Rated residual current of the RCD that covers the way; 0 says there is none. */
  rcdMa: residualMaSchema.optional(),
  floorAreaM2: floorAreaM2Schema.optional(),
  /** Let-through energy of the device at the fault current, as its maker states it. */
  letThroughA2s: energyA2sSchema.optional(),
  // fcu
  fuseRatingA: currentASchema.optional(),
  switched: z.boolean().optional(),
  // socket-outlet
  gangs: z.union([z.literal(1), z.literal(2)]).optional(),
  // plate-switch
  switching: z.enum(switchings).optional(),
  /** 2 for a double-pole switch. */
  poles: z.union([z.literal(1), z.literal(2)]).optional(),
  // plate-switch, isolator, cooker-control, junction-box
  ratingA: currentASchema.optional(),
  // cooker-control
  hasSocketOutlet: z.boolean().optional(),
  distanceToApplianceM: distanceMSchema.optional(),
  // appliance, luminaire, ceiling-rose
  appliance: z.enum(applianceKinds).optional(),
  litres: litresSchema.optional(),
  /** The largest fuse the appliance's maker allows before it. */
  makersFuseA: currentASchema.optional(),
  /** True in a room with a bath or shower. */
  inBathroom: z.boolean().optional(),
});

export type StationSettings = z.infer<typeof stationSettingsSchema>;
export type DeviceStandard = (typeof deviceStandards)[number];
export type Curve = (typeof curves)[number];
