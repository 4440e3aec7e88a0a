import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { settingName } from "../attempt/attempt-state.ts";
import { workStateOf } from "../attempt/work-state.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { ownRun } from "../bench/own-run.ts";
import { done, refuse } from "../refusal.ts";
import type { Act, Decision } from "./act.ts";
import { type Actor, authorOf } from "./actor.ts";
import { refusalByTable } from "./refusal-by-table.ts";
import { situationOf } from "./situation.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

/**
 * Does an act for whoever sends it, or says why not: what the table does not allow is refused before the act's own
 * code runs.
 *
 * @throws StoreError; then nothing has changed.
 */
export async function doAct<Name extends ActName>(
  core: BenchCore,
  act: Act<Name>,
  message: ActMessage<Name>,
  actor: Actor,
): Promise<Reply> {
  const run = ownRun(core, actor);
  const standing = {
    actor: actor.kind,
    isAtBench: actor.isRemote !== true,
    state: workStateOf(run?.state),
    isAssessing: core.work.isAssessed,
    isFrozen: core.hold.isFrozen,
  };
  const refused = refusalByTable(act, message, standing);
  if (refused) return refused;
  if (act.isAtRest && !core.board.isReady) return refuse("no-board");
  if (act.isAtRest && !core.board.isSettled) return refuse("unsettled");
  if ("does" in act) return act.does({ core, actor, run }, message);
  return run ? record(core, run, act.decides(situationOf(run), message), actor) : refuse("no-attempt");
}

/** Puts what was decided on record; a setting can be taken back. */
function record(core: BenchCore, run: AttemptRun, decision: Decision, actor: Actor): Reply {
  if (!decision.ok) return decision;
  const before = run.state.declared;
  run.record(decision.events, authorOf(actor));
  for (const event of decision.events)
    if (event.type === "setting") {
      const { subject, key } = event.content;
      const was = before.get(settingName(subject, key))?.value ?? null;
      core.work.addUndo({ kind: "setting", setting: { subject, key }, before: was });
    }
  return done;
}
