import { z } from "zod";
import type { CableId } from "../../shared/board/ids.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({
  cable: z
    .string()
    .max(80)
    .transform((text) => text as CableId),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "choose-load-cable": z.infer<typeof schema>;
  }
}

/** Looks at how warm another cable gets. */
export const chooseLoadCable: Act<"choose-load-cable"> = {
  schema,
  who: workers,
  states: ["wiring"],
  inAssessed: "not-in-assessed",
  decides: ({ cables, state }, { cable }) => {
    if (!cables.includes(cable)) return refuse("no-such-cable");
    return cable === state.load.cable ? events() : events({ type: "load-cable-chosen", content: { cable } });
  },
};
