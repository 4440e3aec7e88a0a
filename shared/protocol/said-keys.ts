/**
 * Every key the server puts into a `Said` or a refused `Answer`, with the facts that go in its gaps. The kiosk's
 * catalogues have a sentence for each.
 */

/** `AttemptView.say`: the one line that says what to do now. */
export const sayKeys = {
  "read-caution": [],
  "trainer-confirms": [],
  "clear-board": ["cableCount"],
  "match-as-found": ["inCount", "cableCount"],
  "dead-next": ["step"],
  "dead-done": [],
  "plan-next": ["question"],
  "plan-done": [],
  "wire-start": [],
  "wire-on": [],
  "size-asked": ["cable"],
  "setting-asked": ["station", "key"],
  "mend-findings": ["count"],
  "nothing-to-mend": [],
  "test-not-here": [],
  "load-locked": [],
  "hand-in-now": [],
  "ready-waiting": [],
  "handed-in": [],
} as const;

/** `BenchView.noBoard`: why there is no board. The first seven come from the scanner's `open-failed`. */
export const noBoardKeys = {
  "board-not-found": [],
  "no-gpio-driver": [],
  "no-sysfs-gpio": [],
  "no-rights": [],
  "pin-in-use": [],
  "unknown-chip": [],
  "pin-failed": [],
  "scanner-stopped": [],
} as const;

/** `ScenarioCard.lacks`: what the board has not got. */
export const lacksKeys = {
  "lacks-station": ["station", "kind"],
  "lacks-other-kind": ["station", "kind", "boardKind"],
  "lacks-entry": ["station", "letter", "side"],
  "lacks-setting": ["station", "key", "wanted", "fixed"],
} as const;

/** `PlanView` results: why an answer is right or not. `reason-right` where nothing else need be said. */
export const planReasonKeys = {
  "design-current": ["designCurrentA"],
  "device-below-load": ["designCurrentA", "deviceRatingA"],
  "device-not-next": ["designCurrentA", "deviceRatingA"],
  "tabulated-below": ["tabulatedCurrentA"],
  "tabulated-right": ["tabulatedCurrentA"],
  "size-too-small": ["csaMm2"],
  "size-larger-than-needed": ["csaMm2"],
  "fuse-too-large": ["fuseRatingA"],
  "fuse-too-small": ["fuseRatingA"],
  "reason-right": [],
} as const;

/** `Answer.code` of a refused command. A refused command has changed nothing. */
export const refusalCodes = {
  "bad-message": ["where", "what"],
  "too-many-messages": [],
  "server-error": [],
  "disk-full": [],
  "log-damaged": [],
  "board-lost": [],
  "not-on-a-real-board": [],
  "no-such-contact": [],
  "no-such-entry": [],
  "unknown-code": [],
  "board-not-empty": [],
  "contact-taken": ["contact"],
  "no-such-cable": [],
  "no-such-learner": [],
  "no-such-badge": [],
  "no-such-scenario": [],
  "board-does-not-fit": [],
  "sign-in-first": [],
  "attempt-open": [],
  "no-attempt": [],
  "badge-needed": [],
  "guests-practise": [],
  "open-day-is-for-guests": [],
  "trainer-confirms-first": [],
  "caution-first": [],
  "step-locked": ["step"],
  "make-dead-first": [],
  "is-ready": [],
  "is-handed-in": [],
  "not-in-assessed": [],
  "no-hints-left": [],
  "nothing-to-undo": [],
  "not-a-choice": ["subject", "key"],
  "not-a-question": ["question"],
  "no-reading": [],
  "still-moving": [],
} as const;

export type SayKey = keyof typeof sayKeys;
export type NoBoardKey = keyof typeof noBoardKeys;
export type LacksKey = keyof typeof lacksKeys;
export type PlanReasonKey = keyof typeof planReasonKeys;
export type RefusalCode = keyof typeof refusalCodes;
