import { z } from "zod";
import { contactIdSchema } from "../../shared/board/ids.schema.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({
  probe: z.enum(["red", "black"]),
  at: z.union([contactIdSchema, z.literal("other-probe"), z.null()]),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    probe: z.infer<typeof schema>;
  }
}

/** Puts a probe of the simulated board on a contact, on the other probe or away. */
export const probe: Act<"probe"> = {
  schema,
  who: anybodyAtBench,
  states: always,
  does: ({ core, actor, run }, { probe, at }) => {
    // A walk along the board needs no work on it.
    if (!core.board.walk?.isOn && !run)
      return refuse(actor.kind === "nobody" ? "not-signed-in" : "no-attempt");
    const { isSimulated, port } = core.parts;
    return isSimulated ? port.request({ type: "probe", probe, at }) : refuse("real-board");
  },
};
