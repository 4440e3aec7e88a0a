/** So many hints a task has: a nudge, the rule, the place. A scenario writes as many of its own, or none. */
export const hintLimit = 3;
