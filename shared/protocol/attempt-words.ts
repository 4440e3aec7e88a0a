export const modes = ["practice", "assessed", "open-day"] as const;
export const attemptKinds = ["first", "resubmission", "retake", "re-sit"] as const;
/** The steps of an attempt. */
export const steps = ["caution", "make-dead", "plan", "wire", "test", "load", "hand-in"] as const;

/** Make dead, in the order it is done before a lead is touched. */
export const deadSteps = [
  "identify",
  "isolate",
  "lock-off",
  "prove-tester",
  "test-L-N",
  "test-L-E",
  "test-N-E",
  "prove-tester-again",
] as const;

/** The questions of the design worksheet, in the order of the trade: current, device, cable, then the fuses of FCUs. */
export const planQuestions = [
  "designCurrentA",
  "deviceRatingA",
  "tabulatedCurrentA",
  "csaMm2",
  "fuseRatingA",
  "secondFuseRatingA",
] as const;

/** Settings a person may declare where no plug code says them. */
export const settingKeys = [
  "csaMm2",
  "deviceRatingA",
  "deviceCurve",
  "fuseRatingA",
  "switched",
  "ratingA",
] as const;

/** Why one of the staff ends work that is open. */
export const endReasons = ["learner-gone", "bench-at-fault", "started-wrongly"] as const;

export type EndReason = (typeof endReasons)[number];
export type Mode = (typeof modes)[number];
export type AttemptKind = (typeof attemptKinds)[number];
export type Step = (typeof steps)[number];
export type DeadStep = (typeof deadSteps)[number];
export type PlanQuestion = (typeof planQuestions)[number];
export type SettingKey = (typeof settingKeys)[number];
