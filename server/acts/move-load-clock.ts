import { z } from "zod";
import { loadRunEveryS, loadRunS } from "../../shared/protocol/load-words.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ toS: z.number().min(0).max(loadRunS).multipleOf(loadRunEveryS) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "move-load-clock": z.infer<typeof schema>;
  }
}

/** Looks at another moment of the run, before or after. */
export const moveLoadClock: Act<"move-load-clock"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: ({ state }, { toS }) => {
    if (state.meter.supply !== "holds") return refuse("energise-first");
    return toS === state.load.nowS ? events() : events({ type: "load-clock-moved", content: { toS } });
  },
};
