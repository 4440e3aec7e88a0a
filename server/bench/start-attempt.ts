import { v7 as uuidV7 } from "uuid";
import { byBench } from "../../shared/protocol/author.ts";
import type { BenchCommand } from "../../shared/protocol/commands.schema.ts";
import { fitsBoard } from "../../shared/scenario/fits-board.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import { reduce } from "../attempt/reduce.ts";
import { done, refuse, type Refusal } from "../refusal.ts";
import { pluggedOf } from "../sensed/joins.ts";
import type { BenchCore } from "./bench-core.ts";
import type { Person } from "./session.ts";
import { endChecks } from "./board-check.ts";
import { endRun } from "./end-run.ts";

/** True where the attempt on the bench is this person's. */
export const isOwnAttempt = ({ work, session }: BenchCore): boolean =>
  work.run !== undefined &&
  session.person !== null &&
  work.run.state.learner === (session.person.learner?.id ?? null);

/** Work of before the start has not come back: why. */
const whyNotResumed = ({ health }: BenchCore) =>
  health.isLogDamaged ? "log-damaged" : health.isDiskFull ? "disk-full" : "no-board";

function mayStart(
  core: BenchCore,
  person: Person | null,
  { scenario, mode, endsWaiting }: BenchCommand<"start-attempt">,
) {
  if (!person) return refuse("not-signed-in");
  if (!core.parts.records) return refuse("log-damaged");
  if (!core.board.isReady || !core.board.sensed) return refuse("no-board");
  // Work of before the start comes back first; until then the board cannot be read, or the log not be written.
  if (core.work.toResume) return refuse(whyNotResumed(core));
  if (isOwnAttempt(core) && core.work.run?.state.status !== "handed-in") return refuse("attempt-open");
  // Nobody ends another's assessed work by starting their own; a practice is left, its record stays.
  const { run } = core.work;
  if (run?.state.mode === "assessed" && run.state.status !== "handed-in") return refuse("others-work-open");
  // Who waits for a check keeps their place unless whoever starts has been asked.
  if (run?.state.status === "ready" && !endsWaiting) return refuse("others-work-waiting");
  const kit = core.parts.scenarios.kits.get(scenario);
  if (!kit) return refuse("no-such-scenario");
  if (!fitsBoard(kit.stripped, core.parts.board)) return refuse("no-fit");
  if (mode === "assessed" && core.health.isLogDamaged) return refuse("log-damaged");
  if (mode === "assessed" && person.by === "guest") return refuse("guests-practise");
  if (mode === "assessed" && person.by !== "badge") return refuse("badge-needed");
  // An open-day attempt holds no person.
  if (mode === "open-day" && person.learner) return refuse("open-day-guests");
  return { kit, person, records: core.parts.records, sensed: core.board.sensed };
}

/** Starts an attempt with the board as it is. What was open before is left, and the log says why. */
export function startAttempt(
  core: BenchCore,
  command: BenchCommand<"start-attempt">,
): { ok: true } | Refusal {
  const start = mayStart(core, core.session.person, command);
  if ("ok" in start) return start;
  const { kit, person, records, sensed } = start;
  if (core.work.run) endRun(core, "another-started");
  const { board, boardBytes, rulePackVersion, softwareVersion } = core.parts;
  const attemptId = uuidV7();
  const full = pluggedOf(sensed);
  const events: AttemptEvent[] = [
    {
      type: "attempt-started",
      content: {
        scenario: kit.scenario.id,
        scenarioRevision: kit.scenario.revision,
        scenarioHash: records.log.keepDocument("scenario", kit.bytes),
        board: board.id,
        boardHash: records.log.keepDocument("board", boardBytes),
        rulePackVersion,
        softwareVersion,
        learner: person.learner?.id ?? null,
        kind: command.kind ?? "first",
        mode: command.mode,
        isExistingCircuit: kit.scenario.isExistingCircuit,
      },
    },
    { type: "sensed", content: { added: full.joins, removed: [], full } },
  ];
  records.log.append(
    events.map((event) => ({
      attemptId,
      ...event,
      author: event.type === "sensed" ? byBench : core.session.author,
    })),
  );
  const state = events.reduce<ReturnType<typeof reduce>>(
    (before, event) => reduce(before, attemptId, event),
    undefined,
  );
  core.work.begin(state && core.runOf(kit, state));
  endChecks(core);
  return done;
}
