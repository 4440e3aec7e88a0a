import type { CircuitModel } from "../circuit/model.ts";
import type { Source } from "../trade/source.ts";

/**
 * `danger`: shock or fire if it were real. `fix`: does not meet the regulation or the standard arrangement that
 * is taught. `query`: protected, but the designer must justify it. `note`: worth knowing.
 */
export type Weight = "danger" | "fix" | "query" | "note";

/** Heaviest first. */
export const weights: readonly Weight[] = ["danger", "fix", "query", "note"];

/** True for what has to be put right. */
export const isToMend = (weight: Weight): boolean => weight === "danger" || weight === "fix";

/** Something on the board a finding can be about. */
export interface Place {
  kind: "conductor" | "cable" | "contact" | "entry" | "station";
  id: string;
}

export type FactValue = string | number | boolean | readonly string[];

/** What a rule saw. Its weight comes from the rule's variants, its sentences from the wording catalogue. */
export interface Evidence {
  kind: "evidence";
  variant: string;
  /** What has to be mended; evidence of later rules with the same cause is suppressed. */
  causes: [Place, ...Place[]];
  /** Where it shows, the most telling place first; the causes where nothing else is said. */
  places: Place[];
  /** Numbers and ids for the sentences, units in the names. */
  facts: Record<string, FactValue>;
}

/** A value that a rule needs and does not have. */
export interface Missing {
  kind: "missing";
  place: Place;
  /** The field of the wiring format that is missing, or "contact" where the board cannot tell. */
  field: string;
  cause: "value" | "board";
}

/** One rule of the trade. Rules do not call rules; what two need lives in circuit/ or electrical/. */
export interface Rule {
  id: RuleId;
  variants: Readonly<Record<string, Weight>>;
  source: Source;
  /** Where a variant rests on something else than the rule. */
  variantSources?: Readonly<Record<string, Source>>;
  /** True where its evidence stands whatever else is plugged in: kept while some contact cannot be read. */
  standsWithUnknown?: true;
  /** True where nothing that another rule asks for could mend it: its findings are never kept back. */
  isNeverHidden?: true;
  /** True where it tells what comes of other faults: whatever its place in the order, any of them may explain it. */
  isOutcome?: true;
  /** Rules whose findings at the same station are mended with this one's. */
  explains?: readonly RuleId[];
  check: (model: CircuitModel) => (Evidence | Missing)[];
}

/**
 * Rules that hide what else comes of their cause, in the order of causes: an earlier one explains a later one, of these
 * and of those that only tell.
 */
export const hidingRuleIds = [
  // Conductors
  "short",
  "neutral-earth",
  "two-ways",
  "borrowed-neutral",
  "polarity",
  "split-conductors",
  "cpc-missing",
  "conductor-missing",
  "wrong-side",
  "ring-through-fuse",
  // Shape
  "ring-open",
  "ring-bridged",
  "ring-loop",
  "ring-device",
  "ring-cable",
  "spur-on-spur",
  "spur-one-point",
  "spur-per-point",
  // What protects the cable, and what wants more than that
  "needs-fuse",
  "spur-cable",
  "lighting-device",
  "radial-cable",
  "device-cable",
  "cooker-control",
  "isolation",
  "design-current",
  "lighting-load",
] as const;

/** Rules that hide nothing among themselves, in the order they are run in. */
const tellingRuleIds = [
  "not-served",
  "outside-task",
  "dead-end-lead",
  "crowded-contact",
  "self-lead",
  "two-rings",
  "ring-share",
  "spur-count",
  "spur-heavy",
  "own-circuit",
  "heavy-on-ring",
  "switched-neutral",
  "unswitched",
  "always-on",
  "half-switched",
  "least-size",
  "fuse-size",
  "fused-cable",
  "fused-load",
  "point-load",
  "accessory-rating",
  "volt-drop",
  "fault-loop",
  "cpc-size",
  "rcd",
  "floor-area",
  "test-missing",
  "test-order",
  "reading-misjudged",
] as const;

/** Every rule, in the order of causes: the one list of it. Ids go into the log and are never reused. */
export const ruleIds = [...hidingRuleIds, ...tellingRuleIds] as const;
export type RuleId = (typeof ruleIds)[number];
