import { z } from "zod";
import { entryIdSchema } from "../../shared/board/ids.schema.ts";
import { plugCable as plugWholeCable } from "../bench/board-commands.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({
  entryA: entryIdSchema,
  entryB: entryIdSchema,
  csaMm2: z.number().positive().optional(),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "plug-cable": z.infer<typeof schema>;
  }
}

/** Plugs a whole cable between two entries, on the simulated board. */
export const plugCable: Act<"plug-cable"> = {
  schema,
  who: workers,
  states: ["wiring"],
  does: onOwnRun(plugWholeCable),
};
