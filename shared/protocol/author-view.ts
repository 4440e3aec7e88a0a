import type { StationId } from "../board/ids.ts";
import type { Side, StationKind } from "../board/station-kinds.ts";
import type { FieldProblem } from "../reading/problem.ts";
import type { Weight } from "../rules/rule.ts";
import type { Built, Scenario } from "../scenario/scenario.schema.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";
import type { Earthing } from "../wiring/wiring.schema.ts";
import type { Text } from "../text/text.schema.ts";

/**
 * What a scenario made at this bench is: kept for its maker alone, on the bench to be wired and tried in practice, or
 * offered like any other.
 */
export const ownScenarioStates = ["draft", "on-bench", "offered"] as const;
export type OwnScenarioState = (typeof ownScenarioStates)[number];

/** What every id of a scenario made at a bench begins with: no shipped one does. */
export const ownScenarioPrefix = "own-";

export interface OwnScenarioRow {
  id: string;
  title: Text;
  level: number;
  revision: number;
  state: OwnScenarioState;
}

/** A station of the bench's board that a scenario can use. */
export interface BoardStationView {
  id: StationId;
  kind: StationKind;
  label: string;
  /** How many entries it has a side. */
  entries: Partial<Record<Side, number>>;
  settings: StationSettings;
}

/** What a trainer prepares with. */
export interface PrepareView {
  scenarios: OwnScenarioRow[];
  stations: BoardStationView[];
  /** What a supply is taken to have where nobody says; 0 where the electrode counts instead. */
  usualZeOhm: Record<Earthing, number>;
}

/** What a draft has not got yet before it can be offered. */
export const draftLacks = [
  "stations",
  "walls",
  "places",
  "requirements",
  "model-answer",
  "wrong-answers",
  "sound-wrong-answer",
] as const;
export type DraftLack = (typeof draftLacks)[number];

/** What the bench would say of an answer. */
export interface AnswerCheck {
  kind: "model" | "wrong";
  index: number;
  proposal: "met" | "not-yet" | "cannot-say";
  findings: { weight: Weight; title: string }[];
  /** What cannot be told of it. */
  undetermined: string[];
  /** What is asked for and not met. */
  notMet: string[];
  /** A model answer that is met, or a wrong one that is not, with nothing left untold. */
  isAsMeant: boolean;
}

/** A draft as the bench reads it: completed with the task's text and what each wrong answer is told. */
export interface DraftView {
  /** Null where the draft cannot be read at all. */
  scenario: Scenario | null;
  lacks: DraftLack[];
  /** All else that stands against it. */
  problems: FieldProblem[];
  /** What is asked, a sentence each, in the order of the requirements. */
  asked: string[];
  answers: AnswerCheck[];
}

/** What is wired on the bench for a scenario that is being made. */
export interface WiredView {
  built: Built;
}
