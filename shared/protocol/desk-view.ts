import type { CableId } from "../board/ids.ts";
import type { FaultName } from "../electrical/fault-name.ts";
import type { Text } from "../text/text.schema.ts";
import type { AttemptKind, Mode, Step } from "./attempt-words.ts";
import type { HiddenFault } from "../wiring/hidden-fault.schema.ts";
import type { StaffRole } from "./author.ts";
import type { AttemptView, BoardFace } from "./bench-view.ts";
import type { Adjustments } from "./keep-view.ts";
import type { CriterionAnswer, Outcome, Proposal, ReviewAnswer, SampleRisk, Tick } from "./decision-words.ts";

/** Where the desk finds what it shows; each address answers with one of the views below as JSON. */
export const deskData = "/desk-data";

/** The header of a file of evidence that says how many lines it will have. */
export const lineCountHeader = "Spurwise-Lines";

/** What a list of attempts shows of each, and can be put in the order of. */
export const listColumns = ["learner", "task", "mode", "status", "started", "proposed", "decision"] as const;
export type ListColumn = (typeof listColumns)[number];

/** An attempt as a line of a list. */
export interface DeskRow {
  id: string;
  /** The name of the bench that it was done at, where that is another than this one. */
  otherBench: string | null;
  /** Empty for a guest. */
  learner: string;
  scenario: string;
  title: Text | null;
  mode: Mode;
  kind: AttemptKind;
  status: "open" | "ready" | "handed-in" | "left";
  startedWallMs: number;
  readyWallMs: number | null;
  handedInWallMs: number | null;
  tries: number;
  proposal: Proposal | null;
  isDecided: boolean;
  /** Null before the decision, and for who is to see the work blind or still may. */
  decision: Outcome | null;
  isSealed: boolean;
  isReleased: boolean;
  review: ReviewAnswer | null;
}

export interface DeskList {
  attempts: DeskRow[];
  /** Where the page after this one begins; left out where there is none. */
  next?: string;
  /** Every task that a list may be narrowed to. */
  scenarios: { id: string; title: Text }[];
}

/** One event of an attempt on its time line. */
export interface Moment {
  /** Its place in the attempt, from 0. */
  at: number;
  type: string;
  wallMs: number;
  /** The board or a setting is another after it. */
  isChange: boolean;
  /** What is dangerous or wrong after it, by the ids of its findings. */
  findings: string[];
}

export interface CriterionView {
  id: string;
  text: Text;
  /** Null where only a person can say. */
  proposed: Proposal | null;
}

export type AnswerView = {
  criterion: string;
  proposed: Proposal | null;
  answer: CriterionAnswer;
  reason?: string;
} & Record<Tick, boolean>;

export interface DecisionView {
  hash: string;
  person: string;
  wallMs: number;
  outcome: Outcome;
  says: string;
  criteria: AnswerView[];
  nextKind?: AttemptKind;
  corrects?: { hash: string; why: string };
  sealedWallMs: number | null;
  releasedWallMs: number | null;
  /** When its learner had it before them for the first time. */
  seenWallMs: number | null;
}

/** An attempt with all that people added to it. People are told by name. */
export interface DeskRecord {
  row: DeskRow;
  face: BoardFace;
  rulePackVersion: string;
  moments: Moment[];
  criteriaTitle: Text;
  criteria: CriterionView[];
  /** What is agreed with its learner now; null where nothing is, and for a guest. */
  agreed: Adjustments | null;
  declaredWallMs: number | null;
  observations: { person: string; wallMs: number; seen: string; observerSays: string; learnerSays: string }[];
  /** None for who is to see the work blind. */
  decisions: DecisionView[];
  reviews: { person: string; wallMs: number; answer: ReviewAnswer; says: string }[];
  secondViews: { person: string; wallMs: number; criteria: AnswerView[] }[];
  /** What was decided is not in it: it is there for a second view. */
  isBlind: boolean;
}

/** What is going on at the bench. */
export interface DeskLive {
  me: { id: string; name: string; role: StaffRole };
  /** Whoever looks sits at the bench's own screen. */
  isAtBench: boolean;
  benchName: string;
  nowWallMs: number;
  work: {
    row: DeskRow;
    step: Step;
    isWaitingForTrainer: boolean;
    /** What is hidden in the circuit. */
    hidden: FaultName[];
    /** Of these, what a trainer hid and can take back. */
    hiddenByTrainer: FaultName[];
    view: AttemptView | null;
  } | null;
  /** The tasks with something there to find, and what is hidden for their next start; for a trainer alone. */
  toFind:
    | {
        scenario: string;
        title: Text;
        cables: CableId[];
        hiddenNext: { fault: HiddenFault; name: FaultName }[];
      }[]
    | null;
  face: BoardFace;
  /** Cables that are on the board, whoever left them there. */
  cableCount: number;
  /** Called ready for check, the one who has waited longest first. */
  waiting: DeskRow[];
  /** Assessed work that was handed in and not decided on. */
  toDecide: DeskRow[];
  /** By what a sample may be narrowed, for whoever draws it. */
  samplesBy: {
    assessors: { id: string; name: string }[];
    scenarios: { id: string; title: Text }[];
  } | null;
  /** What the verifier drew last. */
  sample: {
    seed: string;
    risk: SampleRisk;
    /** Whose decisions, by name, and at which task; null where it was drawn from all. */
    assessor: string | null;
    scenario: { id: string; title: Text | null } | null;
    wallMs: number;
    person: string;
    candidateCount: number;
    attempts: DeskRow[];
  } | null;
}
