import type { AnswerView, DeskRecord } from "../../shared/protocol/desk-view.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { boardFace } from "../view/board-face.ts";
import { proposalFor } from "./criteria.ts";
import type { JudgedCriterion } from "./desk-events.ts";
import { deskRow, nameOf } from "./desk-rows.ts";
import { deskAttempt, type DeskAttempt } from "./on-attempt.ts";
import { momentsOf } from "./moments.ts";
import { type ReplayParts, replayParts } from "./replay.ts";
import type { Viewer } from "./shown-decisions.ts";

/** An attempt that can be replayed: its rows and what they are drawn with. */
export interface Replayed {
  attempt: DeskAttempt;
  rows: LogRow[];
  parts: ReplayParts;
  rulePackVersion: string;
}

/** Finds an attempt for the desk; undefined where there is none or its documents cannot be read. */
export function replayed(core: BenchCore, attemptId: string): Replayed | undefined {
  const attempt = deskAttempt(core, attemptId);
  if ("ok" in attempt) return undefined;
  const rows = attempt.records.logReader.rowsOfAttempt(attemptId);
  const started = rows.map(eventOfRow).find((event) => event?.type === "attempt-started");
  if (started?.type !== "attempt-started") return undefined;
  const parts = replayParts(attempt.records.logReader, started.content, core.parts.judge);
  return parts && { attempt, rows, parts, rulePackVersion: started.content.rulePackVersion };
}

const answersOf = (criteria: readonly JudgedCriterion[]): AnswerView[] =>
  criteria.map(({ reason, ...one }) => ({ ...one, ...(reason === undefined ? {} : { reason }) }));

/** What an attempt is and what people added to it. Whoever is to see it blind gets nothing of what was decided. */
export function toldOfAttempt(
  core: BenchCore,
  { attempt, parts, rulePackVersion }: Replayed,
  isBlind: boolean,
): Omit<DeskRecord, "moments"> {
  const { state, record, verdict } = attempt;
  const named = <Told extends { person: string }>(told: Told): Told => ({
    ...told,
    person: nameOf(core.parts, told.person),
  });
  const { criteria, title } = core.parts.criteria;
  return {
    row: deskRow(core.parts, record, isBlind),
    face: boardFace(parts.board, core.parts.isSimulated),
    rulePackVersion,
    criteriaTitle: title,
    criteria: criteria.map((criterion) => ({
      id: criterion.id,
      text: criterion.text,
      proposed: verdict ? proposalFor(criterion, verdict) : null,
    })),
    agreed:
      (record.learner === null ? undefined : core.parts.people.toldOf(record.learner)?.adjustments) ?? null,
    declaredWallMs: state.declaredWallMs,
    observations: isBlind ? [] : state.observations.map(named),
    decisions: isBlind
      ? []
      : state.decisions.map(({ criteria: answers, criteriaHash: _hash, ...decision }) => {
          const { nextKind, corrects, ...rest } = named(decision);
          return {
            ...rest,
            criteria: answersOf(answers),
            ...(nextKind ? { nextKind } : {}),
            ...(corrects ? { corrects } : {}),
          };
        }),
    reviews: isBlind ? [] : state.reviews.map(named),
    secondViews: isBlind
      ? []
      : state.secondViews.map(({ person, wallMs, criteria: answers }) =>
          named({ person, wallMs, criteria: answersOf(answers) }),
        ),
    isBlind,
  };
}

/** The same with each moment of the work, judged. Whoever gets it not blind can give no blind view of it any more. */
export async function deskRecord(
  core: BenchCore,
  attemptId: string,
  viewer: Viewer,
  isBlind: boolean,
): Promise<DeskRecord | undefined> {
  const found = replayed(core, attemptId);
  if (!found) return undefined;
  if (!isBlind) core.shown.add(viewer, [found.attempt.record]);
  const told = toldOfAttempt(core, found, isBlind);
  const { attempt, parts, rows } = found;
  return { ...told, moments: await momentsOf(attempt.records.logReader, parts, attemptId, rows) };
}
