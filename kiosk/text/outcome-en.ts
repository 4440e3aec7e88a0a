/** What a learner is told of the decision on assessed work, in English. */
export const outcomeEn = {
  "outcome.try-again": "Try again from here",
  "outcome.like-this": "Another like this",
  "outcome.declare": "This is my own work",
  "outcome.declared": "You have said that this is your own work.",
  "outcome.met": "All is met.",
  "outcome.not-yet": "Not yet.",
  "outcome.cannot-assess": "The bench stood in the way: this cannot be assessed.",
  "outcome.title": "What was decided on your work",
  "outcome.next.resubmission": "Next: you may mend it and hand it in again.",
  "outcome.next.retake": "Next: you may do it again.",
  "outcome.next.re-sit": "Next: you may sit it again.",
  "outcome.answer.met": "Met:",
  "outcome.answer.not-yet": "Not yet:",
  "outcome.answer.cannot-assess": "Cannot be assessed:",
} as const;
