/** What the bench proposes for a criterion, by what it sensed. */
export const proposals = ["met", "not-yet", "cannot-say"] as const;
/** What a person decides for it; the last where the bench itself stands in the way. */
export const criterionAnswers = ["met", "not-yet", "cannot-assess"] as const;
/** What an attempt comes to. */
export const outcomes = criterionAnswers;
export const reviewAnswers = ["agreed", "look-again"] as const;
/** The evidence for a criterion is, in the assessor's eyes. */
export const ticks = ["isValid", "isAuthentic", "isCurrent", "isSufficient"] as const;
/** Which decisions a sample is drawn from. */
export const sampleRisks = ["all", "overridden", "danger"] as const;

export type Proposal = (typeof proposals)[number];
export type CriterionAnswer = (typeof criterionAnswers)[number];
export type Outcome = (typeof outcomes)[number];
export type ReviewAnswer = (typeof reviewAnswers)[number];
export type Tick = (typeof ticks)[number];
export type SampleRisk = (typeof sampleRisks)[number];
