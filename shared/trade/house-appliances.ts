import type { Source } from "./source.ts";

const source: Source = { kind: "common practice, no source" };

/** What a house plugs in, with the power its plate usually states. None takes more than a plug lets through, 3 kW. */
export const houseAppliances = [
  { appliance: "kettle", powerW: 3000, source },
  { appliance: "heater", powerW: 3000, source },
  { appliance: "fan-heater", powerW: 2000, source },
  { appliance: "washing-machine", powerW: 2200, source },
  { appliance: "toaster", powerW: 1000, source },
  { appliance: "lamp", powerW: 10, source },
] as const;

export type HouseAppliance = (typeof houseAppliances)[number]["appliance"];
