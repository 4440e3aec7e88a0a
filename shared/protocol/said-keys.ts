/**
 * Every key the server puts into a `Said` or a `Refusal`, with the facts that go in its gaps. The kiosk's
 * catalogues have a sentence for each: a `Said` under its key, a refusal under `refused.` and its code.
 */

/** `AttemptView.say`: the one line that says what to do now. */
export const sayKeys = {
  "say.trainer-confirms": [],
  "say.caution": [],
  "say.clear-board": ["cableCount"],
  "say.as-found": ["done", "total"],
  "say.make-dead": [],
  "say.dead": [],
  "say.dead-again": [],
  "say.plan": [],
  "say.wire": [],
  "say.test": [],
  "say.test-unproved": [],
  "say.hunt": [],
  "say.load": [],
  "say.load-off": [],
  "say.size": ["cable"],
  "say.setting": ["station"],
  "say.mend": ["count"],
  "say.sound": [],
  "say.hand-in": [],
  "say.ready": [],
  "say.handed-in": [],
} as const;

/** `BenchView.noBoard`: why there is no board. All but the last are codes of the scanner's `open-failed`. */
export const noBoardKeys = {
  "no-board.board-not-found": [],
  "no-board.no-gpio-driver": [],
  "no-board.no-sysfs-gpio": [],
  "no-board.no-rights": [],
  "no-board.pin-in-use": [],
  "no-board.unknown-chip": [],
  "no-board.pin-failed": [],
  "no-board.scanner-stopped": [],
} as const;

/** `ScenarioCard.lacks`: what the board has not got. */
export const lackKeys = {
  "scenario.lack.station": ["kind", "count"],
  "scenario.lack.kind": ["station", "kind"],
  "scenario.lack.entries": ["station"],
  "scenario.lack.setting": ["station"],
} as const;

/** `FindingView.mend`: what one touch can do about a note. */
export const mendKeys = {
  "mend.csaMm2": ["csaMm2"],
  "mend.deviceRatingA": ["station", "value"],
  "mend.deviceCurve": ["station", "value"],
  "mend.fuseRatingA": ["station", "value"],
  "mend.switched": ["station"],
  "mend.ratingA": ["station", "value"],
  "mend.turn": ["station"],
  "mend.cores": ["cable"],
  "mend.pull": ["cable"],
} as const;

/** What is said of a wrong answer of the plan worksheet before the right one is told. */
export const planHelpKeys = {
  "plan.nudge.designCurrentA": [],
  "plan.nudge.cooking": [],
  "plan.nudge.device-low": [],
  "plan.nudge.device-high": [],
  "plan.nudge.tabulatedCurrentA": [],
  "plan.nudge.tabulated-ring": [],
  "plan.nudge.csaMm2": ["method"],
  "plan.nudge.fuseRatingA": [],
  "plan.relation.designCurrentA": ["totalW"],
  "plan.relation.cooking": ["fullA"],
  "plan.relation.cooking-outlet": ["fullA"],
  "plan.relation.device-low": ["answerA", "designCurrentA"],
  "plan.relation.device-high": ["answerA"],
  "plan.relation.tabulatedCurrentA": ["startA", "ca", "cg", "ci"],
  "plan.relation.csaMm2": ["csaMm2", "tableA", "neededA", "method"],
  "plan.relation.size-other": ["csaMm2"],
  "plan.relation.fuse-high": ["answerA"],
  "plan.relation.fuse-low": ["answerA"],
} as const;

/** Results of the plan worksheet: why an answer is right or not. */
export const planReasonKeys = {
  "plan.reason.designCurrentA": ["designCurrentA"],
  "plan.reason.deviceRatingA": ["designCurrentA", "deviceRatingA"],
  "plan.reason.tabulatedCurrentA": ["tabulatedCurrentA"],
  "plan.reason.csaMm2": ["csaMm2"],
  "plan.reason.size-too-small": ["csaMm2"],
  "plan.reason.size-ring": ["leastCsaMm2"],
  "plan.reason.size-larger": ["csaMm2"],
  "plan.reason.fuseRatingA": ["fuseRatingA"],
  "plan.reason.fuse-below-load": ["answerA", "loadA"],
  "plan.reason.fuse-above-cable": ["answerA"],
  "plan.reason.fuse-larger": ["fuseRatingA"],
} as const;

/** `Refusal.code` of a refused command. A refused command has changed nothing. */
export const refusalCodes = {
  "bad-message": ["where", "what"],
  "too-fast": [],
  "server-error": [],
  "disk-full": [],
  "disk-read-only": [],
  "log-damaged": [],
  "no-board": [],
  "real-board": [],
  "no-such-place": [],
  "no-such-cable": [],
  "in-use": [],
  "unknown-code": [],
  "board-not-empty": [],
  "unknown-learner": [],
  "unknown-badge": [],
  "no-such-scenario": [],
  "no-fit": [],
  "not-signed-in": [],
  "not-for-you": [],
  "attempt-open": [],
  "others-work-open": [],
  "others-work-waiting": [],
  "no-attempt": [],
  "badge-needed": [],
  "guests-practise": [],
  "open-day-guests": [],
  "practice-held": [],
  "trainer-confirms": [],
  "caution-first": [],
  "make-dead-first": [],
  "dead-locked": [],
  "dead-lock-on": [],
  locked: [],
  frozen: [],
  "handed-in": [],
  "not-in-assessed": [],
  "no-hints-assessed": [],
  "no-hints": [],
  "nothing-to-undo": [],
  "not-a-choice": [],
  "not-a-question": [],
  "no-reading": [],
  "nothing-written": [],
  "tips-apart": [],
  "no-two-ends": [],
  "switch-off-first": [],
  "dead-again-first": [],
  "energise-at-test": [],
  "tests-missing": ["test", "left"],
  "tests-failed": ["test"],
  "tests-doubtful": ["test"],
  "put-back-first": [],
  "energise-first": [],
  "no-hunt": [],
  "all-named": ["count"],
  "no-free-outlet": [],
  unsettled: [],
  "no-probes": [],
  "board-first": ["outCount", "inCount"],
  "own-screen-only": [],
  "wait-to-try": ["seconds"],
  "wrong-pin": [],
  "wrong-code": [],
  "set-up-already": [],
  "easy-pin": [],
  "pin-or-badge": [],
  "badge-taken": [],
  "unknown-person": [],
  "person-at-work": [],
  held: [],
  "last-technician": [],
  demonstration: [],
  "nothing-to-confirm": [],
  "nothing-to-end": [],
  "no-such-attempt": [],
  "not-assessed": [],
  "not-handed-in": [],
  "declared-already": [],
  "criteria-missing": [],
  "reason-missing": [],
  "ticks-missing": [],
  "decide-first": [],
  "seal-first": [],
  "decision-sealed": [],
  "released-already": [],
  "not-your-decision": [],
  "not-blind": [],
  "nothing-to-sample": [],
} as const;

export type SayKey = keyof typeof sayKeys;
export type NoBoardKey = keyof typeof noBoardKeys;
export type LackKey = keyof typeof lackKeys;
export type PlanHelpKey = keyof typeof planHelpKeys;
export type PlanReasonKey = keyof typeof planReasonKeys;
export type RefusalCode = keyof typeof refusalCodes;
