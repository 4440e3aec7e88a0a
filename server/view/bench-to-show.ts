import type { Banner, BenchView, BoardFace, ScenarioCard } from "../../shared/protocol/bench-view.ts";
import type { ProgressView } from "../../shared/protocol/progress-view.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { toldToLearner } from "../desk/told-to-learner.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { ownRun } from "../bench/own-run.ts";
import type { Staff } from "../people/person.ts";
import { progressOf } from "../progress/progress-of.ts";
import type { BenchToShow } from "./to-show.ts";
import { staffView } from "./staff-view.ts";
import { boardHealthView } from "./board-health-view.ts";

/** Looked up where tasks are chosen alone. */
function practiceHeld({ parts, session, health }: BenchCore, isAtWork: boolean): { practiceHeld?: string[] } {
  const learner = session.person?.learner;
  if (!learner || !parts.records || isAtWork || health.isLogDamaged) return {};
  const held = parts.records.attempts.practiceHeld(learner.id);
  return held.length > 0 ? { practiceHeld: held } : {};
}

/** What is wrong around the work, each trouble once. */
function banners(core: BenchCore): Banner[] {
  const { parts, health } = core;
  const { status, sensed } = core.board;
  const list: Banner[] = [];
  const add = (kind: Banner["kind"], facts: Banner["facts"] = {}): void => void list.push({ kind, facts });
  if (health.isLogDamaged) add("log-damaged");
  if (health.diskTrouble) add(health.diskTrouble);
  if (status.state === "no-board") add("board-lost", status.facts);
  else
    for (const { kind, station, contacts, facts } of sensed?.faults ?? [])
      list.push({
        kind: "board-fault",
        fault: kind,
        contacts,
        facts: facts ?? {},
        ...(station ? { station } : {}),
      });
  const own = ownRun(core, core.session.actor);
  if (own && (own.state.changedWhileOff || own.state.isTrainerNeeded))
    add("changed-while-off", {
      addedCount: own.state.changedWhileOff?.addedCount ?? 0,
      removedCount: own.state.changedWhileOff?.removedCount ?? 0,
      isTrainerNeeded: own.state.isTrainerNeeded,
    });
  if (own?.state.isReadyLost) add("ready-lost");
  for (const { subject, key, used } of own?.settings.clashes ?? [])
    if (used.by === "sensed") add("setting-clash", { subject, key, used: used.value });
  // A simulated board runs on machines whose clock nobody can tell about; the log keeps the state all the same.
  if (parts.clock.state() === "unsynced" && !parts.isSimulated) add("clock-unset");
  if (parts.isSimulated) add("board-simulated");
  return list;
}

/** The state of the board as the screen is told it. */
function boardState({ board, parts }: BenchCore): Pick<BenchView, "state" | "noBoard"> {
  const { status, sensed } = board;
  if (status.state === "no-board")
    return { state: "no-board", noBoard: { key: `no-board.${status.code}`, facts: status.facts } };
  const isReady = status.state === "ready" && sensed !== undefined && parts.scenarios.isRead;
  return { state: isReady ? "ready" : "starting" };
}

/** What the learner who chooses a task has met already; left out where there is nothing of it to say. */
function metByLearner({ parts, session, health }: BenchCore): Pick<BenchView, "metScenarios"> {
  const id = session.person?.learner?.id;
  const { records } = parts;
  let met: string[] = [];
  if (id !== undefined && records) health.guard(() => (met = records.attempts.scenariosMetBy(id)));
  return met.length > 0 ? { metScenarios: met } : {};
}

/** Only assessed work that was handed in has what people add to it; its learner gets what was released. */
function toldOf(
  { parts }: BenchCore,
  { id, mode, status }: AttemptState,
): Pick<NonNullable<BenchToShow["attempt"]>, "told"> {
  if (mode !== "assessed" || status !== "handed-in" || !parts.records) return {};
  return { told: toldToLearner(parts.records, id) };
}

/** How the learner who chooses a task gets better; left out for guests, and before the first go is over. */
function progressNow(core: BenchCore, cards: readonly ScenarioCard[]): Pick<BenchView, "progress"> {
  const { parts, session, health } = core;
  const learner = session.person?.learner?.id;
  const { records } = parts;
  if (learner === undefined || !records || health.isLogDamaged) return {};
  let progress: ProgressView | undefined;
  health.guard(() => {
    const held = records.attempts.practiceHeld(learner);
    const fitting = cards.filter(({ id, lacks }) => lacks.length === 0 && !held.includes(id));
    progress = progressOf({
      records,
      kits: parts.scenarios.kits,
      open: new Set(fitting.map(({ id }) => id)),
      learner,
      language: session.memory.language,
      nowMs: parts.clock.wallMs(),
    });
  });
  return progress && progress.goes.length > 0 ? { progress } : {};
}

/** Everything there is to show at this moment to a screen of `me`; what of it the screen gets is decided by `viewFor`. */
export function benchToShow(
  core: BenchCore,
  face: BoardFace,
  cards: ScenarioCard[],
  me: Staff | null = core.session.staff,
): BenchToShow {
  const { parts, board, work } = core;
  const { memory, person, learners } = core.session;
  const { undos, isAsked } = work;
  const { sensed, isSettled, selfCheck } = board;
  const run = ownRun(core, core.session.actor);
  const boardHealth = boardHealthView(core);
  return {
    bench: {
      revision: core.revision,
      ...boardState(core),
      benchName: `Spurwise ${parts.records?.log.benchId.slice(-4) ?? ""}`.trim(),
      language: memory.language,
      isLarge: memory.isLarge,
      banners: banners(core),
      person: person && { name: person.learner?.name ?? "", isGuest: person.learner === null },
      // Names are for choosing one's own; once somebody is signed in nobody else's is on the screen.
      ...(!person && work.isOpen ? { isWorkKept: true as const } : {}),
      learners: person ? [] : learners.map(({ id, name }) => ({ id, name })),
      ...practiceHeld(core, run !== undefined),
      staff: staffView(core, me),
      scenarios: cards,
      ...(run ? {} : { ...metByLearner(core), ...progressNow(core, cards) }),
      board: face,
      ...(selfCheck ? { selfCheck } : {}),
      ...(boardHealth ? { boardHealth } : {}),
    },
    isAssessing: work.isAssessed,
    attempt: run
      ? {
          run,
          plan: planSheetOf(run.kit),
          sensed,
          isSettled,
          canUndo: undos.length > 0 && run.state.status === "open",
          isAsked,
          findings: parts.findings,
          ...toldOf(core, run.state),
        }
      : undefined,
  };
}
