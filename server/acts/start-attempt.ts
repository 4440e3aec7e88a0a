import { randomInt } from "node:crypto";
import { v7 as uuidV7 } from "uuid";
import { z } from "zod";
import { type AttemptKind, attemptKinds, modes } from "../../shared/protocol/attempt-words.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import { fitsBoard } from "../../shared/scenario/fits-board.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import { hiddenAtStart, hiddenByTrainer } from "../attempt/hidden-at-start.ts";
import { reduce } from "../attempt/reduce.ts";
import { exerciseKit } from "../exercise/exercises.ts";
import { done, refuse } from "../refusal.ts";
import { pluggedOf } from "../../shared/wiring/plugged.ts";
import type { BenchCore, Records } from "../bench/bench-core.ts";
import type { Person } from "../bench/session.ts";
import { endHealthTools } from "../bench/board-health.ts";
import { endRun } from "../bench/end-run.ts";
import type { Act } from "./act.ts";
import { workers } from "./actor.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

const schema = z.strictObject({
  scenario: z.string().min(1).max(64),
  mode: z.enum(modes),
  kind: z.enum(attemptKinds).optional(),
  /** Somebody else's work that waits for a check is ended; asked of whoever starts. */
  endsWaiting: z.literal(true).optional(),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "start-attempt": z.infer<typeof schema>;
  }
}

/** Begins to work on a scenario, with the board as it is. */
export const startAttempt: Act<"start-attempt"> = {
  schema,
  who: workers,
  states: ["none", "handed-in"],
  elsewhere: "attempt-open",
  does: ({ core }, message) => start(core, message),
};

/** Work of before the start has not come back: why. */
const whyNotResumed = ({ health }: BenchCore) =>
  health.isLogDamaged ? "log-damaged" : (health.diskTrouble ?? "no-board");

function mayStart(
  core: BenchCore,
  person: Person | null,
  { scenario, mode, endsWaiting }: ActMessage<"start-attempt">,
) {
  if (!person) return refuse("not-signed-in");
  if (!core.parts.records) return refuse("log-damaged");
  if (!core.board.isReady || !core.board.sensed) return refuse("no-board");
  // Work of before the start comes back first; until then the board cannot be read, or the log not be written.
  if (core.work.toResume) return refuse(whyNotResumed(core));
  // Nobody ends another's assessed work by starting their own; a practice is left, its record stays.
  const { run } = core.work;
  if (run?.state.mode === "assessed" && run.state.status !== "handed-in") return refuse("others-work-open");
  // Who waits for a check keeps their place unless whoever starts has been asked.
  if (run?.state.status === "ready" && !endsWaiting) return refuse("others-work-waiting");
  const { scenarios, judge } = core.parts;
  const kit =
    scenarios.kits.get(scenario) ?? (mode === "practice" ? exerciseKit(scenario, judge) : undefined);
  if (!kit) return refuse("no-such-scenario");
  if (!fitsBoard(kit.stripped, core.parts.board)) return refuse("no-fit");
  if (kit.isDraft && mode !== "practice") return refuse("draft-practises");
  if (mode === "assessed" && core.health.isLogDamaged) return refuse("log-damaged");
  if (mode === "assessed" && person.by === "guest") return refuse("guests-practise");
  if (mode === "assessed" && person.by !== "badge") return refuse("badge-needed");
  const { learner } = person;
  if (
    mode === "practice" &&
    learner &&
    core.parts.records.attempts.practiceHeld(learner.id).includes(scenario)
  )
    return refuse("practice-held");
  // An open-day attempt holds no person.
  if (mode === "open-day" && person.learner) return refuse("open-day-guests");
  return { kit, person, records: core.parts.records, sensed: core.board.sensed };
}

/** Who practises a task again, straight from the hand-in, goes on from where they were: sizes and settings are still said. */
function saidBefore(
  { work }: BenchCore,
  { scenario, mode }: ActMessage<"start-attempt">,
  { learner }: Person,
): AttemptEvent[] {
  const before = work.run?.state;
  if (before?.status !== "handed-in" || before.mode !== "practice" || mode !== "practice") return [];
  if (before.scenario !== scenario || before.learner !== (learner?.id ?? null)) return [];
  return [...before.declared.values()].map((content) => ({ type: "setting", content }));
}

/** Assessed work at a task that a decision sends back is what that decision said it would be. */
function kindOf(
  { attempts }: Pick<Records, "attempts">,
  { learner }: Person,
  { scenario, mode }: ActMessage<"start-attempt">,
): AttemptKind {
  const next = learner && mode === "assessed" ? attempts.nextKindOf(learner.id, scenario) : undefined;
  return attemptKinds.find((kind) => kind === next) ?? "first";
}

/** Starts an attempt with the board as it is. What was open before is left, and the log says why. */
function start(core: BenchCore, message: ActMessage<"start-attempt">): { ok: true } | Refusal {
  const allowed = mayStart(core, core.session.person, message);
  if ("ok" in allowed) return allowed;
  const { kit, person, records, sensed } = allowed;
  const again = saidBefore(core, message, person);
  if (core.work.run) endRun(core, { reason: "another-started" });
  const { board, boardBytes, rulePackVersion, softwareVersion } = core.parts;
  const attemptId = uuidV7();
  const { hiddenNext = [] } = core.session.memory;
  // Whoever tries out the bench on an open day is no learner of the trainer's.
  const prepared =
    message.mode === "open-day"
      ? undefined
      : hiddenNext.find(({ scenario }) => scenario === message.scenario);
  const hidden = hiddenAtStart(kit, () => randomInt(2 ** 32));
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
        kind: message.kind ?? kindOf(records, person, message),
        mode: message.mode,
        isExistingCircuit: kit.scenario.isExistingCircuit,
      },
    },
    { type: "sensed", content: { added: full.joins, removed: [], full } },
    ...again,
    ...hidden,
    ...hiddenByTrainer(hidden, prepared),
  ];
  records.log.append(
    events.map((event) => ({
      attemptId,
      ...event,
      author: event.type === "attempt-started" ? core.session.author : byBench,
    })),
  );
  const state = events.reduce<ReturnType<typeof reduce>>(
    (before, event) => reduce(before, attemptId, event),
    undefined,
  );
  core.work.begin(state && core.runOf(kit, state));
  if (prepared) core.session.remember({ hiddenNext: hiddenNext.filter((one) => one !== prepared) });
  endHealthTools(core);
  return done;
}
