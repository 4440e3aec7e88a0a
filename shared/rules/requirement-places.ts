import type { Requirement } from "../wiring/wiring.schema.ts";
import { allAt, at } from "./evidence.ts";
import type { Place } from "./rule.ts";
import type { RequirementResult } from "./verdict.ts";

/**
 * Where to look for a requirement: where it is not met, or else all that it is about. Of hidden faults that are to
 * be named nothing is shown: their place is what the learner looks for.
 */
export function requirementPlaces({ requirement, places }: RequirementResult): Place[] {
  if (requirement.kind === "fault-named") return [];
  return places.length > 0 ? places : subjectOf(requirement);
}

function subjectOf(requirement: Exclude<Requirement, { kind: "fault-named" }>): Place[] {
  switch (requirement.kind) {
    case "served":
    case "in-ring":
    case "unfused-spur":
    case "through-fcu":
    case "own-switch":
    case "fuse":
    case "one-circuit":
      return allAt("station", requirement.stations);
    case "shape":
      return [at("station", requirement.of)];
    case "kept":
      return allAt("cable", requirement.cables);
    case "device":
    case "sized":
    case "readings":
      return [at("station", requirement.way)];
    // Asked of every cable: there is no one place to look at.
    case "thrift":
      return [];
  }
}
