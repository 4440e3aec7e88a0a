import { z } from "zod";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ person: z.string().min(1).max(64), isHeld: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "hold-person": z.infer<typeof schema>;
  }
}

/** Keeps what is known of somebody past the end of its time, as for an appeal or by law; or no longer. */
export const holdPerson: Act<"hold-person"> = {
  schema,
  who: ["technician"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { person, isHeld }) =>
    core.parts.people.list.hold(person, isHeld, authorOf(actor)) ?? done,
};
