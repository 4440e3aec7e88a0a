import { z } from "zod";
import { cablesLeft } from "../bench/cables-left.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "clear-board": z.infer<typeof schema>;
  }
}

/**
 * A trainer has the board clear for the next learner: every lead of a simulated one is pulled; of a real one hands have
 * pulled them, and it is done once none is sensed any more. Never under somebody's open work.
 */
export const clearBoard: Act<"clear-board"> = {
  schema,
  who: ["trainer"],
  states: always,
  isRemote: true,
  does: ({ core }) => {
    if (core.work.isOpen) return refuse("work-not-ended");
    if (!core.board.isReady) return refuse("no-board");
    const cableCount = cablesLeft(core.board);
    if (core.parts.isSimulated) return core.parts.port.request({ type: "pull", what: "all" });
    return cableCount === 0 ? done : refuse("cables-left", { cableCount });
  },
};
