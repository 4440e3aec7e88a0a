/** What a learner has practised, rule by rule. Made for who is signed in and chooses a task; never for guests. */
export interface ProgressView {
  /** The last goes first. */
  goes: {
    scenario: string;
    /** Of the task, in the language of the bench. */
    title: string;
    endedWallMs: number;
    outcome: "met" | "not-yet" | "cannot-say" | "left";
  }[];
  /** Every rule that came up, in the order of causes. */
  rules: {
    rule: string;
    title: string;
    trippedCount: number;
    keptCount: number;
    /** Tripped over at the last go that had to do with it. */
    isTripping: boolean;
    /** When it wants practice again. */
    dueWallMs: number;
  }[];
  /** What to practise next, the most wanted first: a rule and the task for it. */
  next: { rule: string; title: string; scenario: string }[];
}
