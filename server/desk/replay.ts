import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import { pictureOf } from "../attempt/picture-of.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import { reduce } from "../attempt/reduce.ts";
import { stillRun } from "../attempt/still-run.ts";
import { type ScenarioKit, scenarioKit } from "../library.ts";
import type { LogReader } from "../store/log-reader.ts";
import { attemptView } from "../view/attempt-view.ts";

/** What an attempt is drawn and judged with, as it was when it began. */
export interface ReplayParts {
  kit: ScenarioKit;
  board: BoardDescription;
  judge: (wiring: Wiring) => Verdict;
}

type Started = Extract<AttemptEvent, { type: "attempt-started" }>["content"];

/** The scenario and the board of an attempt from the log's store; undefined where they can no longer be read. */
export function replayParts(
  log: LogReader,
  { scenario, scenarioHash, board: boardId, boardHash }: Started,
  judge: ReplayParts["judge"],
): ReplayParts | undefined {
  const kitBytes = log.document(scenarioHash);
  const boardBytes = log.document(boardHash);
  if (!kitBytes || !boardBytes) return undefined;
  const kit = scenarioKit(kitBytes, `${scenario}.json`);
  const board = readBoard(Buffer.from(boardBytes).toString("utf8"), `${boardId}.json`);
  return "problems" in kit || !board.ok ? undefined : { kit, board: board.value, judge };
}

/** The state of an attempt after the row at a place, that one included; undefined where it had not begun. */
export function stateAt(attemptId: string, rows: readonly LogRow[], at: number): AttemptState | undefined {
  return rows.slice(0, at + 1).reduce<AttemptState | undefined>((state, row) => {
    const event = eventOfRow(row);
    return event ? reduce(state, attemptId, event) : state;
  }, undefined);
}

/**
 * A state of an attempt as the desk sees it, assessed or not: the plan with all its figures, and the verdict. What was
 * handed in keeps the verdict that it was handed in with.
 */
export function deskViewOf(parts: ReplayParts, state: AttemptState, language: Language): AttemptView {
  const asked =
    state.status === "handed-in" && state.asked
      ? state.asked
      : pictureOf(parts, state.plugged, state).judged();
  const run = stillRun(parts, { ...state, mode: "practice", status: "handed-in", asked });
  const shown = {
    run,
    plan: planSheetOf(parts.kit),
    sensed: undefined,
    isSettled: true,
    canUndo: false,
    isAsked: false,
    findings: "asked" as const,
  };
  return { ...attemptView(shown, language), mode: state.mode, unknown: [...state.plugged.unknown] };
}

/** The attempt after one of its rows; undefined where there is none. */
export function momentView(
  parts: ReplayParts,
  attemptId: string,
  rows: readonly LogRow[],
  at: number,
  language: Language,
): AttemptView | undefined {
  const state = stateAt(attemptId, rows, at);
  return state && deskViewOf(parts, state, language);
}
