import type { BoardFace } from "../../shared/protocol/bench-view.ts";
import type { ShowBar, ShowView } from "../../shared/protocol/show-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { isBenchInUse } from "../bench/is-bench-in-use.ts";
import { challengeKit, challengeResult, challengeRun, type ChallengeParts } from "../show/challenge.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import { attemptView } from "./attempt-view.ts";

/** Why nobody can try the challenge now; undefined where anybody can. */
export function showBar(core: BenchCore): ShowBar | undefined {
  if (isBenchInUse(core)) return "in-use";
  if (!core.board.isReady || !core.board.sensed || !core.parts.scenarios.isRead) return "no-board";
  return challengeKit(core.parts.scenarios, core.parts.board) ? undefined : "no-task";
}

const partsOf = ({ parts: { scenarios, board, judge } }: BenchCore): ChallengeParts | undefined => {
  const kit = challengeKit(scenarios, board);
  return kit && { kit, board, judge };
};

/** What is wired, drawn as at the step Wire; nothing is said of it while somebody tries. */
function wiredView(
  core: BenchCore,
  parts: ChallengeParts,
  plugged: typeof core.show.plugged,
  language: Language,
) {
  const run = challengeRun(parts, plugged);
  const shown = {
    run,
    plan: planSheetOf(parts.kit),
    sensed: undefined,
    isSettled: true,
    canUndo: false,
    isAsked: false,
    findings: "asked" as const,
  };
  return { ...attemptView(shown, language), unknown: [...plugged.unknown] };
}

/** What a show screen gets, whole: the story, or what whoever stands there tries. Nobody's name and nobody's work. */
export function showViewFor(core: BenchCore, face: BoardFace): ShowView {
  const { show } = core;
  const { phase, at, leftMs } = show;
  const language = show.language ?? core.session.memory.language;
  const bar = showBar(core);
  const base = {
    revision: core.revision,
    language,
    phase: phase.name,
    at,
    board: face,
    ...(bar ? { bar } : {}),
  };
  const parts = partsOf(core);
  if (!parts || (phase.name !== "challenge" && phase.name !== "result")) return base;
  const plugged = phase.name === "result" ? phase.plugged : show.plugged;
  const attempt = wiredView(core, parts, plugged, language);
  if (phase.name === "result")
    return { ...base, attempt, result: challengeResult(parts, plugged, phase.outcome, language) };
  const { joins } = show.plugged;
  return { ...base, attempt, ...(leftMs === undefined ? { inCount: joins.length } : { leftMs }) };
}
