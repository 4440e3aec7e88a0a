import type { CableId, ConductorId, StationId } from "../../shared/board/ids.ts";
import type { Fact } from "../../shared/protocol/bench-view.ts";
import type {
  AttemptKind,
  DeadStep,
  Mode,
  PlanQuestion,
  SettingKey,
  Step,
} from "../../shared/protocol/attempt-words.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import type { Reading } from "../../shared/wiring/wiring.schema.ts";
import type { LiveReading } from "./attempt-events.ts";
import type { HuntState } from "./hunt-state.ts";
import type { LoadState } from "./load-state.ts";
import type { MeterState } from "./meter-state.ts";
import type { DeadState } from "./make-dead.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";

/** A setting somebody declared: what, of what, by whom. */
export interface Declared {
  subject: CableId | StationId;
  key: SettingKey;
  value: Fact;
  by: "learner" | "trainer";
}

/** An attempt as its events tell it. Made by `reduce` alone. */
export interface AttemptState {
  id: string;
  scenario: string;
  scenarioHash: string;
  learner: string | null;
  kind: AttemptKind;
  mode: Mode;
  isExistingCircuit: boolean;
  step: Step;
  entered: readonly Step[];
  /** Steps of making dead as they were written before they were acted out. */
  dead: readonly { step: DeadStep; isOutOfOrder: boolean }[];
  deadState: DeadState;
  /** The steps that count now. */
  deadCounted: readonly DeadStep[];
  isDeadDeclared: boolean;
  /** The way was switched on at the step Test: from then on the circuit is one to be made dead. */
  hasBeenLive: boolean;
  plan: Readonly<Partial<Record<PlanQuestion, number>>>;
  /** All answers that were given to a question, in their order. */
  planGiven: Readonly<Partial<Record<PlanQuestion, readonly number[]>>>;
  /** The board as far as it is logged. */
  plugged: Plugged;
  /** Leads that were in when the attempt began and have not been out since. */
  leftIn: readonly ConductorId[];
  /** The board was sensed once since the start. */
  isBegun: boolean;
  /** Changes of the board since the last full state. */
  changeCount: number;
  declared: ReadonlyMap<string, Declared>;
  /** The size a cable had when it was last in. */
  lastCsaMm2: ReadonlyMap<CableId, number>;
  /** Readings of the circuit as it is wired now; those of before a change are past. */
  readings: readonly Reading[];
  liveReadings: readonly LiveReading[];
  /** Readings taken before the circuit was changed. */
  pastReadingCount: number;
  /** Null for attempts of before hunts: what the scenario hides is what is hidden. */
  hunt: HuntState | null;
  meter: MeterState;
  load: LoadState;
  /** The readings whose value was asked for, as `test of`. */
  expectedAsked: readonly string[];
  hints: readonly Text[];
  tryCount: number;
  /** The verdict last asked for, or that of the hand-in, and the wiring it was for. */
  asked: { verdict: Verdict; wiringHash: string } | null;
  status: "open" | "ready" | "handed-in" | "left";
  /** The board as it was when it was called ready for check; null while it is not. */
  readyWith: Plugged | null;
  /** The board was changed while a check was waited for; until the next step of the work. */
  isReadyLost: boolean;
  /** An assessed attempt that was interrupted goes on only when a trainer has said so. */
  isTrainerNeeded: boolean;
  /** What had changed when the bench came back; until the next step of the work. */
  changedWhileOff: { addedCount: number; removedCount: number } | null;
}

/** The key of a declared setting. */
export const settingName = (subject: CableId | StationId, key: SettingKey): string => `${subject}|${key}`;
