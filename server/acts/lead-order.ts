import { z } from "zod";
import { orderedBy } from "../lead/order-by.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";

const bench = z.string().min(1).max(60);
const minutes = z.number().int().min(1).max(600);

const schema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("freeze-all"), isFrozen: z.boolean() }),
  z.strictObject({ what: z.literal("time-all"), minutes: minutes.nullable() }),
  z.strictObject({ what: z.literal("more-time"), bench, minutes }),
  z.strictObject({ what: z.literal("reset"), bench }),
  z.strictObject({ what: z.literal("reset-all") }),
  z.strictObject({ what: z.literal("project"), bench: bench.nullable() }),
  z.strictObject({ what: z.literal("send-pack") }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "lead-order": z.infer<typeof schema>;
  }
}

/** What a trainer at the lead has the benches do. Each bench has it in its own log, with who gave it. */
export const leadOrder: Act<"lead-order"> = {
  schema,
  who: ["trainer"],
  isFree: true,
  states: always,
  isRemote: true,
  does: async ({ core, actor }, message) => {
    const { lead } = core.parts;
    if (!lead?.workshop.isLeading) return refuse("no-lead");
    const { workshop, packs } = lead;
    const by = orderedBy(actor);
    switch (message.what) {
      case "freeze-all":
        return workshop.freeze(message.isFrozen, by);
      case "time-all":
        return workshop.orderAll("set-time", { what: "set", minutes: message.minutes }, by);
      case "more-time":
        return workshop.order(message.bench, "set-time", { what: "more", minutes: message.minutes }, by);
      case "reset":
        return workshop.order(message.bench, "reset-bench", {}, by);
      case "reset-all":
        return workshop.orderAll("reset-bench", {}, by);
      case "project":
        return workshop.project(message.bench) ? done : refuse("no-picture");
      case "send-pack": {
        const { pack, sealed } = packs.make(core, { person: by.person, session: by.session });
        workshop.sendPack(pack.version, sealed);
        return done;
      }
    }
  },
};
