import { z } from "zod";
import { cableId } from "../../shared/board/ids.ts";
import { isSameFault } from "../../shared/electrical/fault-name.ts";
import { faultNameSchema } from "../../shared/protocol/fault-name.schema.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";
import type { Situation } from "./situation.ts";

const schema = z.strictObject({ name: faultNameSchema, isTakenBack: z.literal(true).optional() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "name-fault": z.infer<typeof schema>;
  }
}

/**
 * Says what is wrong in a hunt and where, or takes that back. Whether it is so is not said before the hand-in; no more
 * can be named than there are.
 */
export const nameFault: Act<"name-fault"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: (situation, { name, isTakenBack }) => {
    const { hunt } = situation.state;
    if (!hunt) return refuse("no-hunt");
    const isNamed = hunt.named.some((one) => isSameFault(one.name, name));
    if (isTakenBack)
      return isNamed ? events({ type: "fault-named", content: { name, isTakenBack } }) : refuse("no-hunt");
    if (!isPlaceOf(situation, name)) return refuse("no-such-place");
    if (!isNamed && hunt.named.length >= hunt.faults.length)
      return refuse("all-named", { count: hunt.faults.length });
    return events({ type: "fault-named", content: { name } });
  },
};

/** A cable that is in, or was there as found; a station of the task where a link is missing. */
function isPlaceOf(
  { scenario, cables, state }: Situation,
  { kind, place }: z.infer<typeof faultNameSchema>,
): boolean {
  if (kind === "missing-link") return scenario.stations.some(({ id }) => id === place);
  const asFound = scenario.asFound.cables.map(({ from, to }) => cableId(from, to));
  return [...cables, ...asFound, ...(state.hunt?.renewed ?? [])].some((id) => id === place);
}
