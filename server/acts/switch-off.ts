import { z } from "zod";
import { stationIdSchema } from "../../shared/board/ids.schema.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ way: stationIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "switch-off": z.infer<typeof schema>;
  }
}

/** Switches the way off. */
export const switchOff: Act<"switch-off"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: ({ testTask }, { way }) =>
    way === testTask.way ? events({ type: "switched-off", content: { way } }) : refuse("no-such-place"),
};
