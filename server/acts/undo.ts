import { z } from "zod";
import { undo as undoLast } from "../bench/board-commands.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    undo: z.infer<typeof schema>;
  }
}

/** Takes the last plug, pull or setting back. */
export const undo: Act<"undo"> = {
  schema,
  who: workers,
  states: ["wiring"],
  does: onOwnRun(undoLast),
};
