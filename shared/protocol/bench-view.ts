import type { CableId, ContactId, EntryId, Role, RoleClass, StationId } from "../board/ids.ts";
import type { ApplianceKind, Core, Side, StationKind } from "../board/station-kinds.ts";
import type { BoardFault, BoardFaultKind } from "../board/sensed-state.schema.ts";
import type { Place, Weight } from "../rules/rule.ts";
import type { DeadPair } from "./make-dead.schema.ts";
import type { StrippedScenario } from "../scenario/scenario.schema.ts";
import type { Text } from "../text/text.schema.ts";
import type { ReferenceMethod } from "../wiring/wiring.schema.ts";
import type { AttemptKind, DeadStep, Mode, PlanQuestion, SettingKey, Step } from "./attempt-words.ts";
import type { Language } from "../text/languages.ts";
import type { StaffRole } from "./author.ts";
import type { CriterionAnswer, Outcome } from "./decision-words.ts";
import type { HuntResult, HuntView } from "./hunt-view.ts";
import type { LoadView } from "./load-view.ts";
import type { ProgressView } from "./progress-view.ts";
import type { TestView } from "./test-view.ts";

export type Fact = string | number | boolean;

/** A sentence of the kiosk's own catalogue: its key and what goes in the gaps. */
export interface Said {
  key: string;
  facts: Record<string, Fact>;
}

/** Something wrong around the work, in plain words: who should do what. */
export interface Banner {
  kind:
    | "frozen"
    | "time-left"
    | "time-up"
    | "board-lost"
    | "board-fault"
    | "board-simulated"
    | "disk-full"
    | "disk-read-only"
    | "clock-unset"
    | "log-damaged"
    | "changed-while-off"
    | "ready-lost"
    | "setting-clash";
  fault?: BoardFaultKind;
  station?: StationId;
  contacts?: ContactId[];
  facts: Record<string, Fact>;
}

/** The board's own face, without its line numbers. */
export interface BoardFace {
  id: string;
  name: string;
  isSimulated: boolean;
  hasCodes: boolean;
  hasProbes: boolean;
  stations: FaceStation[];
}

export interface FaceStation {
  id: StationId;
  kind: StationKind;
  label: string;
  gangs?: 1 | 2;
  appliance?: ApplianceKind;
  face: { x: number; y: number; width: number; height: number };
  entries: {
    id: EntryId;
    letter: string;
    side: Side;
    contacts: { id: ContactId; role: Role; core: Core }[];
  }[];
  front: { id: ContactId; role: Role }[];
}

/** One offered scenario. `lacks` says what the board has not got; empty where it fits. */
export interface ScenarioCard {
  id: string;
  title: Text;
  place: Text;
  level: number;
  teaches: Text;
  task: Text;
  needs: { kind: StationKind; count: number }[];
  lacks: Said[];
  /** A trainer is still making it: it can be tried in practice. */
  isDraft?: true;
}

export interface SensedCable {
  id: CableId;
  from: EntryId;
  to: EntryId;
  conductors: { from: ContactId; to: ContactId; class: RoleClass }[];
  /** Corners of its way along the plan, in grid steps, station to station. */
  path: { x: number; y: number }[];
  lengthM?: number;
  csaMm2?: number;
  /** The bench asks for its size; with the size it had when it was last in. */
  asksSize?: { offeredCsaMm2?: number };
  /** How much of what it may carry it is asked to carry, 0 to 1 and over. Never in an assessed attempt. */
  share?: number;
  /**
   * What it may carry as it is run, against what the device before it, its ring or its spur asks of it; at the step Load
   * against what it carries at the moment that is looked at. Practice only.
   */
  carries?: { ratingA: number; neededA: number; isBelow: boolean };
  /** How all of it is rated, and where the piece lies that makes it so. Practice only. */
  run?: CableRunView;
  /** A lead of it is sensed and not on the disk yet: it would be lost if the power went now. */
  isUnsaved?: true;
  /** True for a cable that was there when the work began. Never in an assessed attempt's stead of a mark. */
  isAsFound?: boolean;
}

export interface CableRunView {
  method: ReferenceMethod;
  insulationMm?: number;
  /** Corners of the piece that is rated worst, in grid steps; where it runs through several. */
  worstPath?: { x: number; y: number }[];
}

/** Where cables run in what makes them carry less, or asks for more, as the plan draws it. Practice only. */
export interface PlanZone {
  kind: "insulation" | "metal-frame";
  method: ReferenceMethod;
  /** Runs of it, in grid steps. */
  pieces: { from: { x: number; y: number }; to: { x: number; y: number } }[];
}

export interface StationSetting {
  station: StationId;
  key: SettingKey;
  value?: Fact;
  by?: "sensed" | "learner" | "trainer" | "scenario";
  /** What may be chosen; empty where it is fixed. */
  choices: Fact[];
}

/** A finding as a learner reads it: where, what, why, remedy and reference are whole sentences. */
export interface FindingView {
  id: string;
  weight: Weight;
  title: string;
  where: string;
  what: string;
  why: string;
  remedy: string;
  reference: string;
  /** Where and what with every place named, where the sentences above count some. */
  inFull?: { where: string; what: string };
  places: Place[];
  /** Bars to compare, where the finding is about them. */
  bars?: { name: "Ib" | "In" | "Iz" | "leg" | "least"; currentA: number }[];
  /** While the verdict is current: what one touch can do that takes it away: what the key says, and what is asked of the server, in order. */
  mend?: { said: Said; steps: MendStep[] };
  /** While the verdict is current: how many more notes come out once this is mended; left out where none does or nobody can tell. */
  followCount?: number;
}

/** One act of a mend. */
export type MendStep =
  | { act: "declare"; subject: CableId | StationId; key: SettingKey; value: Fact }
  | { act: "pull"; cable: CableId }
  | { act: "plug-cable"; entryA: EntryId; entryB: EntryId; csaMm2?: number };

export interface RequirementView {
  text: string;
  /** The sentence with every place named, where the one above counts some. */
  inFull?: string;
  answer: "met" | "not-yet" | "cannot-say";
  /** Where it is not met, or else what it is about; empty where to show it would give it away. */
  places: Place[];
}

export interface VerdictView {
  findings: FindingView[];
  requirements: RequirementView[];
  undetermined: { text: string; place: Place; cause: "value" | "board" }[];
  proposal: "met" | "not-yet" | "cannot-say";
  /** The state of the board it was given for; the screen dims it once the board has changed. */
  isCurrent: boolean;
  /** Held back until the board has been at rest. */
  isHeld: boolean;
}

export interface PlanView {
  questions: {
    question: PlanQuestion;
    /** Where a fuse is to be chosen. */
    station?: StationId;
    choices?: number[];
    answer?: number;
    /** Practice only. */
    result?: { isRight: boolean; reason: Said };
  }[];
  /** Practice only, once the currents, the device and the cable are answered. */
  bars?: { name: "Ib" | "In" | "Iz" | "leg" | "least"; currentA: number }[];
  /** With the bars of a ring: its legs are among them only once it is wired with loads on it. */
  areLegsLater?: true;
}

/** What cables may carry by the published table; the same for every work at a task, assessed or not. */
export interface CableTableView {
  methods: ReferenceMethod[];
  /** One capacity a method, in their order; null where the table has none. */
  rows: { csaMm2: number; capacityA: (number | null)[] }[];
}

/** What a breaker feeds. */
export type CircuitUse = "socket-outlets" | "lights" | "cooker" | "shower" | "water-heater";

/** How the circuit that is being made dead stands. */
export interface DeadView {
  breakers: { number: number; isOn: boolean; isLocked: boolean }[];
  /** Once it was read. */
  chart?: { breaker: number; feeds: CircuitUse; isOfTask: boolean }[];
  reading: { at: "proving-unit" | DeadPair; voltageV: number } | null;
  /** The step that goes on where it is dead. */
  then: "plan" | "test";
  /** Why the last act does not count; practice only. */
  missed?: "chart-first" | "lock-first" | "prove-first" | "live";
}

/** A decision as its learner reads it. */
export interface OutcomeView {
  outcome: Outcome;
  says: string;
  criteria: { id: string; text: Text; answer: CriterionAnswer; reason: string }[];
  nextKind?: AttemptKind;
  /** They have had it before them already. */
  isSeen?: true;
}

/** A decision on work of a learner that they may see, with what it is on. */
export interface ReleasedOutcome {
  attempt: string;
  scenario: string;
  releasedWallMs: number;
  outcome: OutcomeView;
  /** What was hidden, where it was a hunt. */
  hunt?: HuntResult;
}

export interface AttemptView {
  id: string;
  scenario: StrippedScenario;
  mode: Mode;
  kind: AttemptKind;
  step: Step;
  steps: { step: Step; state: "done" | "now" | "open" | "locked" }[];
  status: "open" | "ready" | "handed-in" | "released";
  /** The one line that says what to do now. */
  say: Said;
  zones: PlanZone[];
  cables: SensedCable[];
  /** Contacts stacked on one another. */
  joints: ContactId[][];
  unknown: ContactId[];
  settings: StationSetting[];
  asFound: { cable: CableId; isIn: boolean }[];
  canUndo: boolean;
  /** The steps of making dead with what counts; empty where there is no list to keep, as in assessed work. */
  dead: { step: DeadStep; isDone: boolean }[];
  /** There where there is a circuit to make dead. */
  deadState?: DeadView;
  plan: PlanView;
  cableTable: CableTableView;
  /** There for who stands at the step Test. */
  test?: TestView;
  /** There for who stands at the step Load. */
  load?: LoadView;
  /** There where something is hidden in the circuit. */
  hunt?: HuntView;
  hints: { used: number; left: number; shown: Text[] };
  tries: number;
  /** Assessed work that was handed in: the learner has said that it is their own. */
  isOwnWorkDeclared?: boolean;
  /** What was decided on assessed work, once it was released. */
  outcome?: OutcomeView;
  /** Practice that was handed in: the id of another exercise like it, where there is one for this board. */
  exerciseAfter?: string;
  /** Null where none may be shown or none was asked for. */
  verdict: VerdictView | null;
}

/** What the tools for the health of the board have found. */
export interface BoardHealthView {
  /** As in `BenchView.selfCheck`. */
  selfCheck?: { doneCount: number; totalCount: number; isDone: boolean };
  /** Contacts and test faces that a probe has touched, the one touched last at the end. */
  walk?: { isOn: boolean; touched: ContactId[]; leftCount: number };
  /** What the lead between two entries shows, as sensed at rest. */
  lead?: {
    entryA: EntryId;
    entryB: EntryId;
    joined: [ContactId, ContactId][];
    open: ContactId[];
    /** The code read at an end, and the size it stands for where the board knows it. */
    codes: { entry: EntryId; code: number; csaMm2?: number }[];
  };
  /** What is wrong now, and what else the last self-check found. */
  faults: BoardFault[];
}

/** What the bench says to those who are neither learners nor guests. */
export interface StaffView {
  /** Whoever of them is signed in on this screen. */
  me: { name: string; role: StaffRole } | null;
  /** Who may unlock with a PIN; while nobody of them is signed in. */
  unlockers: { id: string; name: string; role: StaffRole }[];
  /** Nobody is set up yet: what the first person is set up with. On the bench's own screen alone. */
  firstStartCode?: string;
  /** The people are invented, and everybody may know their badges. */
  isDemonstration?: true;
  /** For a trainer: the work that lies open on the bench; a guest has no name. */
  work?: { name: string; mode: Mode; isWaitingForTrainer: boolean };
  /** For a technician: whether the network was let in at the start, and whether it will be at the next. */
  network?: { isOpen: boolean; isChosen: boolean };
  /** For a technician at the bench: the staff, and whose records are on hold; the learners are `BenchView.learners`. */
  people?: { staff: { id: string; name: string; role: StaffRole }[]; held: readonly string[] };
}

/** Everything the bench screen gets, whole. Made by `viewFor` alone. */
export interface BenchView {
  revision: number;
  /** `starting` until the scanner has opened the board; `no-board` where it cannot, with the reason. */
  state: "starting" | "no-board" | "ready";
  noBoard?: Said;
  benchName: string;
  language: Language;
  isLarge: boolean;
  banners: Banner[];
  person: { name: string; isGuest: boolean } | null;
  learners: { id: string; name: string }[];
  /** The tasks that whoever is signed in may not practise now: their assessed work on them is not released yet. */
  practiceHeld?: string[];
  /** Nobody is signed in and somebody's work is kept: it goes on when they sign in. */
  isWorkKept?: true;
  staff: StaffView;
  scenarios: ScenarioCard[];
  /** Which of them the learner who is signed in has met already; while they choose a task. */
  metScenarios?: string[];
  /** How they get better, for a learner who is signed in; while they choose a task. */
  progress?: ProgressView;
  /** What was decided on their assessed work, the last released first; while they choose a task. */
  outcomes?: ReleasedOutcome[];
  board: BoardFace | null;
  attempt: AttemptView | null;
  selfCheck?: { doneCount: number; totalCount: number; isDone: boolean };
  /** There once a tool was used or a fault is known. While assessed work is open it tells nothing of the wiring. */
  boardHealth?: BoardHealthView;
}
