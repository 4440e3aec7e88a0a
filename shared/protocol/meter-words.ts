/** What the dial of the meter can stand at: three functions for a dead circuit, two for a live one. */
export const meterFunctions = ["voltage", "low-ohms", "insulation", "loop", "rcd"] as const;
export const testVoltages = [250, 500] as const;
export const rcdMultiples = [0.5, 1, 5] as const;

export type MeterFunction = (typeof meterFunctions)[number];
