import { type RuleId, ruleIds } from "./rule.ts";

const ranks = new Map<RuleId, number>(ruleIds.map((id, rank) => [id, rank]));

/** The place of a rule in the order of causes, the first 0. */
export const rankOf = (id: RuleId): number => ranks.get(id) ?? ruleIds.length;
