import type { Banner, BenchView, BoardFace, ScenarioCard } from "../../shared/protocol/bench-view.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { isAssessing } from "../bench/board-check.ts";
import { isOwnAttempt, isWorkOpen } from "../bench/start-attempt.ts";
import type { BenchPicture } from "./bench-picture.ts";
import { boardCheckView } from "./board-check-view.ts";

/** What is wrong around the work, each trouble once. */
function banners(core: BenchCore): Banner[] {
  const { board, sensed, parts, run } = core;
  const list: Banner[] = [];
  const add = (kind: Banner["kind"], facts: Banner["facts"] = {}): void => void list.push({ kind, facts });
  if (core.isLogDamaged) add("log-damaged");
  if (core.isDiskFull) add("disk-full");
  if (board.state === "no-board") add("board-lost", board.facts);
  else
    for (const { kind, station, contacts, facts } of sensed?.faults ?? [])
      list.push({
        kind: "board-fault",
        fault: kind,
        contacts,
        facts: facts ?? {},
        ...(station ? { station } : {}),
      });
  const own = isOwnAttempt(core) ? run : undefined;
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
function boardState({ board, sensed, parts }: BenchCore): Pick<BenchView, "state" | "noBoard"> {
  if (board.state === "no-board")
    return { state: "no-board", noBoard: { key: `no-board.${board.code}`, facts: board.facts } };
  const isReady = board.state === "ready" && sensed !== undefined && parts.scenarios.isRead;
  return { state: isReady ? "ready" : "starting" };
}

/** Everything there is to show at this moment; what of it a screen gets is decided by `viewFor`. */
export function pictureOf(core: BenchCore, face: BoardFace, cards: ScenarioCard[]): BenchPicture {
  const { memory, person, parts, run, sensed, undo, isAsked, selfCheck } = core;
  const isOwn = isOwnAttempt(core);
  const boardCheck = boardCheckView(core);
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
      ...(!person && isWorkOpen(core) ? { isWorkKept: true as const } : {}),
      learners: person ? [] : core.learners.map(({ id, name }) => ({ id, name })),
      scenarios: cards,
      board: face,
      ...(selfCheck ? { selfCheck } : {}),
      ...(boardCheck ? { boardCheck } : {}),
    },
    isAssessing: isAssessing(core),
    attempt:
      run && isOwn
        ? {
            run,
            plan: planSheetOf(run.kit),
            sensed,
            isSettled: core.isSettled,
            canUndo: undo.length > 0 && run.state.status === "open",
            isAsked,
            findings: parts.findings,
          }
        : undefined,
  };
}
