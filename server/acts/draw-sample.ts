import { z } from "zod";
import { sampleRisks } from "../../shared/protocol/decision-words.ts";
import { drawSample as draw } from "../desk/draw-sample.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const id = z.string().min(1).max(64);
const schema = z.strictObject({
  seed: z.string().trim().min(1).max(64),
  size: z.number().int().min(1).max(200),
  risk: z.enum(sampleRisks),
  assessor: id.optional(),
  scenario: id.optional(),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "draw-sample": z.infer<typeof schema>;
  }
}

/** A verifier draws which decisions to look at; who has the seed can draw the same again. */
export const drawSample: Act<"draw-sample"> = {
  schema,
  who: ["verifier"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, asked) => {
    const { records, isLogDamaged } = core.parts;
    if (!records || isLogDamaged) return refuse("log-damaged");
    const { candidateCount, attempts } = draw(records.attempts, asked);
    if (attempts.length === 0) return refuse("nothing-to-sample");
    const content = { person: actor.staff ?? "", ...asked, candidateCount, attempts };
    records.log.append([{ attemptId: null, type: "sample-drawn", author: authorOf(actor), content }]);
    return done;
  },
};
