import { z } from "zod";
import { contactIdSchema } from "../../shared/board/ids.schema.ts";
import { plug as plugLead } from "../bench/board-commands.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ contactA: contactIdSchema, contactB: contactIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    plug: z.infer<typeof schema>;
  }
}

/** Plugs one lead between two contacts, on the simulated board. */
export const plug: Act<"plug"> = {
  schema,
  who: workers,
  states: ["wiring"],
  does: onOwnRun(plugLead),
};
