import type { BenchView, ScenarioCard } from "../../shared/protocol/bench-view.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { outcomesFor } from "../desk/told-to-learner.ts";
import { progressOf } from "../progress/progress-of.ts";

type OwnRecords = Pick<BenchView, "practiceHeld" | "metScenarios" | "progress" | "outcomes">;

/**
 * What the records tell the learner who chooses a task: what is held back from them, what they have met already, what
 * was decided on their work, and how they get better. Each is left out where there is nothing of it to say; guests have no records.
 */
export function ownRecords(
  { parts, session, health }: BenchCore,
  cards: readonly ScenarioCard[],
): OwnRecords {
  const learner = session.person?.learner?.id;
  const { records } = parts;
  if (learner === undefined || !records) return {};
  const own: OwnRecords = {};
  health.guard(() => {
    const met = records.attempts.scenariosMetBy(learner);
    if (met.length > 0) own.metScenarios = met;
    if (health.isLogDamaged) return;
    const held = records.attempts.practiceHeld(learner);
    if (held.length > 0) own.practiceHeld = held;
    const outcomes = outcomesFor(records, learner);
    if (outcomes.length > 0) own.outcomes = outcomes;
    const fitting = cards.filter(({ id, lacks }) => lacks.length === 0 && !held.includes(id));
    const progress = progressOf({
      records,
      kits: parts.scenarios.kits,
      judge: parts.judge,
      open: new Set(fitting.map(({ id }) => id)),
      learner,
      language: session.memory.language,
      nowMs: parts.clock.wallMs(),
    });
    if (progress.goes.length > 0) own.progress = progress;
  });
  return own;
}
