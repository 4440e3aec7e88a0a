import type { AttemptView, BoardFace } from "../../shared/protocol/bench-view.ts";
import type { BenchReport } from "../../shared/protocol/lead-view.ts";
import { benchNameOf } from "../bench/bench-name.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { nameOf } from "../desk/desk-rows.ts";
import { deskViewOf } from "../desk/replay.ts";
import { titleOf } from "../exercise/exercises.ts";

const secondMs = 1000;

/** The plan of a piece of work as it is sensed; what the desk says of it beside is left out. */
function pictureOf({ work, parts }: BenchCore): AttemptView | null {
  const { run, isOpen } = work;
  if (!run || !isOpen) return null;
  const { board, judge } = parts;
  const view = deskViewOf({ kit: run.kit, board, judge }, { ...run.state, plugged: run.plugged }, "en");
  return {
    ...view,
    verdict: null,
    plan: { questions: [] },
    hints: { used: view.hints.used, left: 0, shown: [] },
    cableTable: { methods: [], rows: [] },
    dead: [],
  };
}

function workOf(core: BenchCore): BenchReport["work"] {
  const { state, isOpen, toResume } = core.work;
  const { records, scenarios } = core.parts;
  const record = isOpen && state ? records?.attempts.byId(state.id) : undefined;
  if (!state || !record) return null;
  return {
    attempt: state.id,
    learner: state.learner === null ? "" : nameOf(core.parts, state.learner),
    title: titleOf(scenarios, state.scenario) ?? { en: state.scenario, pl: state.scenario },
    mode: state.mode,
    step: state.step,
    startedWallMs: record.startedWallMs,
    readyWallMs: record.readyWallMs,
    isWaitingForTrainer: state.isTrainerNeeded || toResume?.mode === "assessed",
  };
}

/** How a bench is, for its lead. @throws StoreError */
export function benchReport(
  core: BenchCore,
  face: BoardFace,
  packs: { version: number; waiting: number | null },
): BenchReport {
  const { board, session, hold, health } = core;
  const { clock, records } = core.parts;
  const { leftMs, isFrozen } = hold;
  const { person, staff } = session;
  const nowWallMs = Math.round(clock.wallMs());
  return {
    benchName: benchNameOf(records?.log.benchId),
    nowWallMs,
    state: board.state,
    clock: clock.state(),
    faults: [...new Set((board.sensed?.faults ?? []).map(({ kind }) => kind))],
    records: health.isLogDamaged ? "damaged" : (health.diskTrouble ?? "sound"),
    person: staff ? staff.name : person && (person.learner?.name ?? ""),
    isFrozen,
    // To the second: what is only a little later each time is no change.
    timeUpWallMs:
      leftMs === undefined || isFrozen ? null : Math.round((nowWallMs + leftMs) / secondMs) * secondMs,
    heldTimeMs: leftMs !== undefined && isFrozen ? Math.round(leftMs) : null,
    work: workOf(core),
    picture: pictureOf(core),
    face,
    packVersion: packs.version,
    waitingPackVersion: packs.waiting,
  };
}
