import { z } from "zod";
import { orderedBy } from "../lead/order-by.ts";
import { usualLeadPort } from "../lead/usual-port.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { keepers } from "./actor.ts";

/** A name or an address, a colon and a port; the usual port where none is said. */
const addressSchema = z
  .string()
  .trim()
  .min(1)
  .max(255)
  .regex(/^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(:\d{1,5})?$/i, "a name or an address, a colon and a port");

const schema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("lead"), isLeading: z.boolean() }),
  z.strictObject({ what: z.literal("show-code") }),
  z.strictObject({ what: z.literal("forget"), bench: z.string().min(1).max(60) }),
  z.strictObject({ what: z.literal("join"), address: addressSchema, code: z.string().min(1).max(20) }),
  z.strictObject({ what: z.literal("leave") }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "lead-act": z.infer<typeof schema>;
  }
}

/** The host and the port of an address. */
function placeOf(address: string): { host: string; port: number } {
  const { hostname, port } = new URL(`http://${address}`);
  const host = hostname.replace(/^\[(.*)\]$/, "$1");
  return { host, port: port === "" ? usualLeadPort : Number(port) };
}

/**
 * Who leads whom: this bench leads a workshop or no longer, shows a pairing code, forgets a bench; or it is paired with a
 * lead by the code shown there, and is led no longer.
 */
export const leadAct: Act<"lead-act"> = {
  schema,
  who: keepers,
  isFree: true,
  states: always,
  isRemote: true,
  does: async ({ core, actor }, message) => {
    const { lead } = core.parts;
    if (!lead) return refuse("no-lead");
    const { workshop, link } = lead;
    const by = orderedBy(actor);
    switch (message.what) {
      case "lead":
        await workshop.lead(message.isLeading);
        return done;
      case "show-code":
        if (!workshop.isLeading) return refuse("no-lead");
        workshop.showCode(by);
        return done;
      case "forget":
        workshop.forget(message.bench, by);
        return done;
      case "join": {
        const { host, port } = placeOf(message.address);
        return link.pair(host, port, message.code, by);
      }
      case "leave":
        link.leave(by);
        return done;
    }
  },
};
