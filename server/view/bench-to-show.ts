import type { Banner, BenchView, BoardFace, ScenarioCard } from "../../shared/protocol/bench-view.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { toldToLearner } from "../desk/told-to-learner.ts";
import { benchNameOf } from "../bench/bench-name.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { ownRun } from "../bench/own-run.ts";
import type { Staff } from "../people/person.ts";
import type { BenchToShow } from "./to-show.ts";
import { ownRecords } from "./own-records.ts";
import { staffView } from "./staff-view.ts";
import { boardHealthView } from "./board-health-view.ts";

/** What is wrong around the work, each trouble once. */
function banners(core: BenchCore): Banner[] {
  const { parts, health } = core;
  const { status, sensed } = core.board;
  const list: Banner[] = [];
  const add = (kind: Banner["kind"], facts: Banner["facts"] = {}): void => void list.push({ kind, facts });
  if (core.hold.isFrozen) add("frozen");
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
  const { leftMs } = core.hold;
  if (leftMs !== undefined && leftMs <= 0) add("time-up");
  if (leftMs !== undefined && leftMs > 0) add("time-left", { minutes: Math.ceil(leftMs / 60_000) });
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

/** Only assessed work that was handed in has what people add to it; its learner gets what was released. */
function toldOf(
  { parts }: BenchCore,
  { id, mode, status }: AttemptState,
): Pick<NonNullable<BenchToShow["attempt"]>, "told"> {
  if (mode !== "assessed" || status !== "handed-in" || !parts.records) return {};
  return { told: toldToLearner(parts.records, id) };
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
      benchName: benchNameOf(parts.records?.log.benchId),
      language: memory.language,
      isLarge: memory.isLarge,
      banners: banners(core),
      person: person && { name: person.learner?.name ?? "", isGuest: person.learner === null },
      // Names are for choosing one's own; once somebody is signed in nobody else's is on the screen.
      ...(!person && work.isOpen ? { isWorkKept: true as const } : {}),
      learners: person ? [] : learners.map(({ id, name }) => ({ id, name })),
      staff: staffView(core, me),
      scenarios: cards,
      ...(run ? {} : ownRecords(core, cards)),
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
          hasProbeLeads: board.hasProbes && !parts.isSimulated,
          isSettled,
          canUndo: undos.length > 0 && run.state.status === "open",
          isAsked,
          findings: parts.findings,
          ...toldOf(core, run.state),
        }
      : undefined,
  };
}
