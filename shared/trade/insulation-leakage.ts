import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const memory: Source = {
  kind: "from memory",
  about: "insulation resistance of sound PVC cable between two cores, for one metre of it",
};

/** Leakage of sound insulation: so small that a whole house reads above what the meter shows. */
export const insulationLeakage = sourced({
  soundCableMegohmM: [1_000_000, memory],
});
