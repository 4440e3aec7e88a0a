import { z } from "zod";
import { cablesLeft } from "../bench/cables-left.ts";
import { endRun } from "../bench/end-run.ts";
import { noteHold } from "../bench/hold-bench.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "reset-bench": z.infer<typeof schema>;
  }
}

/**
 * A trainer makes the bench ready for the next group: practice that lies open ends and its record stays, whoever was signed
 * in is signed out, the time is no longer set, and a simulated board is cleared; of a real one the next learner is told
 * to. Never under assessed work, nor while somebody waits for a check.
 */
export const resetBench: Act<"reset-bench"> = {
  schema,
  who: ["trainer"],
  states: always,
  isRemote: true,
  does: async ({ core, actor }) => {
    if (core.work.isAssessed) return refuse("others-work-open");
    if (core.work.state?.status === "ready") return refuse("others-work-waiting");
    const person = actor.staff ?? "";
    noteHold(core, "bench-reset", { person }, authorOf(actor));
    if (core.work.isOpen) endRun(core, { reason: "ended", person, why: "next-group" }, authorOf(actor));
    else if (core.work.run) endRun(core, { reason: "left" });
    core.session.signOut();
    core.hold.setLeft(undefined);
    if (!core.parts.isSimulated || !core.board.isReady || cablesLeft(core.board) === 0) return done;
    return core.parts.port.request({ type: "pull", what: "all" });
  },
};
