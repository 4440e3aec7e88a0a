import { z } from "zod";
import { stationIdSchema } from "../../shared/board/ids.schema.ts";
import { switchingOn } from "../../shared/electrical/live-network.ts";
import { liveOf } from "../attempt/meter-shows.ts";
import { slotsNow } from "../attempt/test-record.ts";
import { refuse } from "../refusal.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";
import type { Situation } from "./situation.ts";

const schema = z.strictObject({ way: stationIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    energise: z.infer<typeof schema>;
  }
}

/** Switches the way on, once its dead tests are on record and satisfactory; it may trip at once. */
export const energise: Act<"energise"> = {
  schema,
  who: workers,
  states: ["wiring"],
  isAtRest: true,
  decides: (situation, { way }) => {
    const { state, testTask, circuit } = situation;
    if (way !== testTask.way) return refuse("no-such-place");
    const why = notYet(situation);
    if (why) return why;
    const outcome = switchingOn(liveOf(testTask, circuit(), state.meter), circuit().built, way);
    return events({ type: "energised", content: { way, outcome } });
  },
};

/**
 * Why the way stays off. In assessed work by what is on record and what the learner said of it alone; in practice also
 * where a reading does not hold, or the way was not put back together.
 */
function notYet({ state, testTask, circuit }: Situation): Refusal | undefined {
  const isPractice = state.mode !== "assessed";
  const slots = slotsNow(testTask, state.readings, isPractice ? circuit().model() : undefined);
  const missing = slots.filter(({ recorded }) => !recorded);
  if (missing[0]) return refuse("tests-missing", { test: missing[0].test, left: missing.length });
  const failed = slots.find(({ recorded }) => recorded?.judged === "fail");
  if (failed) return refuse("tests-failed", { test: failed.test });
  if (!isPractice) return undefined;
  const doubtful = slots.find(({ recorded }) => recorded?.check !== "right");
  if (doubtful) return refuse("tests-doubtful", { test: doubtful.test });
  return state.meter.ringEnds || state.meter.link ? refuse("put-back-first") : undefined;
}
