import type { LogRow } from "../../shared/protocol/log-row.ts";
import { hexOf } from "../store/row-hash.ts";
import { type DeskContent, deskEventOfRow, type DeskEventType } from "./desk-events.ts";

/** Something a person added: what, when, and the hash of its row. */
export type Told<Type extends DeskEventType> = DeskContent<Type> & { wallMs: number; hash: string };

export type DecisionTold = Told<"decided"> & {
  sealedWallMs: number | null;
  releasedWallMs: number | null;
  /** When its learner had it before them for the first time. */
  seenWallMs: number | null;
};

/** What people added to an attempt, each in the order in which it was added. */
export interface DeskState {
  declaredWallMs: number | null;
  observations: readonly Told<"observed">[];
  /** The last one stands; one before it was corrected or not sealed. */
  decisions: readonly DecisionTold[];
  reviews: readonly Told<"reviewed">[];
  secondViews: readonly Told<"second-viewed">[];
}

const nothingTold: DeskState = {
  declaredWallMs: null,
  observations: [],
  decisions: [],
  reviews: [],
  secondViews: [],
};

const marked = (
  { decisions }: DeskState,
  hash: string,
  mark: Partial<Pick<DecisionTold, "sealedWallMs" | "releasedWallMs" | "seenWallMs">>,
): DecisionTold[] => decisions.map((one) => (one.hash === hash ? { ...one, ...mark } : one));

function after(state: DeskState, row: LogRow): DeskState {
  const event = deskEventOfRow(row);
  const { wallMs } = row;
  const when = { wallMs, hash: hexOf(row.hash) };
  switch (event?.type) {
    case undefined:
      return state;
    case "own-work-declared":
      return { ...state, declaredWallMs: state.declaredWallMs ?? wallMs };
    case "observed":
      return { ...state, observations: [...state.observations, { ...event.content, ...when }] };
    case "decided": {
      const marks = { sealedWallMs: null, releasedWallMs: null, seenWallMs: null };
      const decision = { ...event.content, ...when, ...marks };
      return { ...state, decisions: [...state.decisions, decision] };
    }
    case "decision-sealed":
      return { ...state, decisions: marked(state, event.content.decision, { sealedWallMs: wallMs }) };
    case "released":
      return { ...state, decisions: marked(state, event.content.decision, { releasedWallMs: wallMs }) };
    case "decision-seen":
      return { ...state, decisions: marked(state, event.content.decision, { seenWallMs: wallMs }) };
    case "reviewed":
      return { ...state, reviews: [...state.reviews, { ...event.content, ...when }] };
    case "decision-shown":
      return state;
    case "second-viewed":
      return { ...state, secondViews: [...state.secondViews, { ...event.content, ...when }] };
  }
}

/** What people added to an attempt, by the rows of the log in their order. */
export const deskStateOf = (rows: readonly LogRow[]): DeskState => rows.reduce(after, nothingTold);

/** What a learner may see: the decision that was released last. */
export const releasedDecision = ({ decisions }: DeskState): DecisionTold | undefined =>
  decisions.findLast(({ releasedWallMs }) => releasedWallMs !== null);
