import { z } from "zod";
import { bytesOfCriteria } from "../desk/criteria.ts";
import { judgedCriteria } from "../desk/decision.ts";
import { addToAttempt, whyNotDecided } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { answersSchema, attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema, criteria: answersSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "view-second": z.infer<typeof schema>;
  }
}

/** A second view of an attempt, by somebody who has neither decided on it nor been shown what was decided. */
export const viewSecond: Act<"view-second"> = {
  schema,
  who: ["assessor", "verifier"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt: id, criteria: given }) =>
    addToAttempt(core, actor, id, (attempt, person) => {
      const refused = whyNotDecided(attempt);
      if (refused) return refused;
      if (!attempt.verdict) return refuse("not-handed-in");
      const isTold = attempt.state.decisions.some(
        (decision) => decision.person === person || core.shown.has(person, id, decision.wallMs),
      );
      if (isTold) return refuse("not-blind");
      const criteria = judgedCriteria(core.parts.criteria, attempt.verdict, given);
      if ("ok" in criteria) return criteria;
      const criteriaHash = attempt.records.log.keepDocument("criteria", bytesOfCriteria(core.parts.criteria));
      return { type: "second-viewed", content: { person, criteriaHash, criteria } };
    }),
};
