import { z } from "zod";
import { noteHold } from "../bench/hold-bench.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const minuteMs = 60_000;
const mostMinutes = 600;

const schema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("set"), minutes: z.number().int().min(1).max(mostMinutes).nullable() }),
  z.strictObject({ what: z.literal("more"), minutes: z.number().int().min(1).max(mostMinutes) }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "set-time": z.infer<typeof schema>;
  }
}

/** A trainer sets the time of a group, or gives one bench more of it. Nothing ends by itself when it is up. */
export const setTime: Act<"set-time"> = {
  schema,
  who: ["trainer"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { what, minutes }) => {
    const { leftMs } = core.hold;
    if (what === "more" && leftMs === undefined) return refuse("no-time-set");
    noteHold(core, "time-set", { what, minutes, person: actor.staff ?? "" }, authorOf(actor));
    const givenMs = minutes === null ? undefined : minutes * minuteMs;
    core.hold.setLeft(what === "more" ? Math.max(0, leftMs ?? 0) + (givenMs ?? 0) : givenMs);
    return done;
  },
};
