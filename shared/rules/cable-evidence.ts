import type { Coordination } from "../circuit/coordination.ts";
import type { CableModel } from "../circuit/model.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing } from "./rule.ts";

/** How a cable stands to its device, with the design current of its circuit beside it, as evidence named at the cable or as the value that is missing. */
export const cableEvidence = (
  { id, csaMm2, method }: CableModel,
  coordination: Coordination,
  designA: number | undefined,
): (Evidence | Missing)[] => {
  if (coordination.is === "protected") return [];
  if (coordination.is === "unknown") {
    const { subject, field } = coordination;
    return [missing(at(subject.includes("~") ? "cable" : "station", subject), field)];
  }
  const { is, deviceA, ratingA, allowedA } = coordination;
  const size = csaMm2 === undefined ? {} : { csaMm2 };
  const load = designA === undefined ? {} : { designA };
  const facts = { cable: id, method, deviceA, ratingA, allowedA, ...size, ...load };
  return evidence(is, [at("cable", id)], facts);
};
