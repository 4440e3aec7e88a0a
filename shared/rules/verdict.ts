import type { CableId, StationId } from "../board/ids.ts";
import type { Requirement } from "../wiring/wiring.schema.ts";
import type { FactValue, Place, RuleId, Weight } from "./rule.ts";

export interface Finding {
  /** Stable within a verdict: rule, variant and first cause. */
  id: string;
  rule: RuleId;
  variant: string;
  weight: Weight;
  causes: Place[];
  places: Place[];
  facts: Record<string, FactValue>;
}

/** A finding that another finding's cause explains: kept, with by what. */
export interface Suppressed extends Finding {
  by: string;
}

export interface Undetermined {
  rule: RuleId;
  place: Place;
  field: string;
  /** `board`: a contact cannot be read. `value`: nobody has said it. */
  cause: "value" | "board";
}

/** What a cable is up against. Undefined where a value is missing. */
export interface CableFigures {
  csaMm2?: number;
  lengthM?: number;
  /** Iz: what the cable may carry as it is run. */
  ratingA?: number;
  /** In: the device or fuse before it. */
  deviceA?: number;
  /** Which station that device or fuse is in. */
  deviceAt?: StationId;
  /** What Iz must be at least: In, or what takes its place in a ring and in a spur. */
  neededA?: number;
  /** Ib: the most it is asked to carry, by the load case of the verdict. */
  designA?: number;
  /** designA over ratingA. */
  share?: number;
}

export interface PointFigures {
  dropV?: number;
  dropLimitV?: number;
  zsOhm?: number;
  zsLimitOhm?: number;
}

export interface RequirementResult {
  requirement: Requirement;
  answer: "met" | "not-yet" | "cannot-say";
  /** Stations and cables where it is not met. */
  places: Place[];
}

export interface Verdict {
  packVersion: string;
  rulesRun: RuleId[];
  /** Heaviest first, then in the order of causes, then by id. */
  findings: Finding[];
  suppressed: Suppressed[];
  undetermined: Undetermined[];
  figures: { cables: Record<CableId, CableFigures>; points: Record<StationId, PointFigures> };
  requirements: RequirementResult[];
  proposal: "met" | "not-yet" | "cannot-say";
}
