import { z } from "zod";

/**
 * What a building can have of each quantity, so that no figure worked out from one overflows or vanishes. The reader of
 * a file is told the bound that a value is beyond.
 */
const within = (least: number, most: number) => z.number().min(least).max(most);

/** Length of one cable. */
export const lengthMSchema = within(0.01, 1000);
export const powerWSchema = within(0.1, 100_000);
/** Of a device, a fuse or an accessory. */
export const currentASchema = within(0.1, 1000);
/** Of a RCD; 0 says there is none. */
export const residualMaSchema = within(0, 30_000);
export const csaMm2Schema = within(0.1, 1000);
/** Of a supply, an electrode or a poor joint. */
export const resistanceOhmSchema = within(0.001, 100_000);
/** As a meter shows it: leads alone can read nought. */
export const readingOhmSchema = within(0, 100_000);
export const insulationMegohmSchema = within(0, 100_000);
/** Depth in a wall, or how much of a cable insulation surrounds. */
export const depthMmSchema = within(0, 1_000_000);
export const floorAreaM2Schema = within(0.1, 100_000);
export const litresSchema = within(0.1, 10_000);
export const energyA2sSchema = within(1, 1e9);
export const distanceMSchema = within(0, 1000);
