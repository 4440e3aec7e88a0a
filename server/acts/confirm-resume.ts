import { z } from "zod";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "confirm-resume": z.infer<typeof schema>;
  }
}

/** A trainer has looked at the board: assessed work goes on that the bench was off in the middle of. */
export const confirmResume: Act<"confirm-resume"> = {
  schema,
  who: ["trainer"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }) => {
    // Work of before the start comes back once the board can be read; until then nobody can have looked at it.
    if (core.work.toResume) return refuse("no-board");
    const { run } = core.work;
    if (!run?.state.isTrainerNeeded || !core.work.isOpen) return refuse("nothing-to-confirm");
    const content = { person: actor.staff ?? "" };
    run.record([{ type: "resume-confirmed", content }], authorOf(actor));
    return done;
  },
};
