import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { attemptView } from "./attempt-view.ts";
import type { BenchToShow } from "./to-show.ts";

/** Who looks: whoever stands at the bench, or one of the staff on the network. */
export type Audience = "bench" | "remote";

/**
 * What a screen gets, whole. The one place that decides what an audience may see; nothing else is ever sent to a
 * screen. In an assessed attempt the bench gets joins, sizes, settings, readings and the health of the board,
 * and nothing that is derived from them: to tell a learner right or wrong would spoil the evidence.
 */
export function viewFor(audience: Audience, { bench, isAssessing, attempt }: BenchToShow): BenchView {
  const whole = {
    ...(isAssessing ? withoutLeads(bench) : bench),
    attempt: attempt ? attemptView(attempt, bench.language) : null,
  };
  switch (audience) {
    case "bench":
      return whole;
    case "remote":
      return forRemote(whole);
  }
}

/** Names are for choosing one's own at the bench, what somebody has met is theirs, and the first start's code is for who stands there. */
function forRemote({ staff, ...view }: BenchView): BenchView {
  const told = { ...staff, unlockers: [] };
  delete told.firstStartCode;
  delete told.people;
  const { metScenarios: _metScenarios, practiceHeld: _practiceHeld, progress: _progress, ...rest } = view;
  return { ...rest, learners: [], staff: told };
}

/** What the tools tell of leads would tell of the wiring; whether the board is well does not. */
function withoutLeads({ boardHealth, ...bench }: BenchToShow["bench"]): BenchToShow["bench"] {
  if (!boardHealth) return bench;
  const { selfCheck, faults } = boardHealth;
  return { ...bench, boardHealth: { ...(selfCheck ? { selfCheck } : {}), faults } };
}
