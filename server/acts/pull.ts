import { z } from "zod";
import { cableIdSchema, contactIdSchema } from "../../shared/board/ids.schema.ts";
import { pull as pullLeads } from "../bench/board-commands.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("lead"), contactA: contactIdSchema, contactB: contactIdSchema }),
  z.strictObject({ what: z.literal("cable"), cable: cableIdSchema }),
  z.strictObject({ what: z.literal("all") }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    pull: z.infer<typeof schema>;
  }
}

/** Pulls a lead, a cable or all, on the simulated board. */
export const pull: Act<"pull"> = {
  schema,
  who: workers,
  // Clearing the board is getting ready, not work on the circuit, until the work has begun.
  states: ({ what }) => (what === "all" ? ["caution", "make-dead", "wiring"] : ["wiring"]),
  does: onOwnRun(pullLeads),
};
