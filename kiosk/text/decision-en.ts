/** What an act about a decision is refused with, in English. */
export const decisionEn = {
  "refused.no-such-attempt": "There is no such piece of work.",
  "refused.not-assessed": "This is practice. Only assessed work is decided on.",
  "refused.not-handed-in": "This work is not handed in yet.",
  "refused.declared-already": "You have said so already.",
  "refused.criteria-missing": "Answer every criterion.",
  "refused.reason-missing": "Say why.",
  "refused.ticks-missing": "What is met needs all four ticks.",
  "refused.decide-first": "Decide first.",
  "refused.seal-first": "Seal the decision first.",
  "refused.decision-sealed": "This decision is sealed. Correct it and say why.",
  "refused.released-already": "The learner can see it already.",
  "refused.not-your-decision": "Somebody else decided this. Only they can seal it.",
  "refused.not-blind": "You have seen what was decided. A second view has to be blind.",
  "refused.nothing-to-sample": "There is no decision to draw from.",
} as const;
