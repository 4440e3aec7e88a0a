import { z } from "zod";
import { bytesOfCriteria } from "../desk/criteria.ts";
import { judgedCriteria, outcomeOf } from "../desk/decision.ts";
import { addToAttempt, whyNotDecided } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { answersSchema, attemptIdSchema, saidSchema } from "./desk-schemas.ts";

const schema = z.strictObject({
  attempt: attemptIdSchema,
  criteria: answersSchema,
  says: saidSchema,
  nextKind: z.enum(["resubmission", "retake", "re-sit"]).optional(),
  /** Why a decision that is sealed is corrected. */
  correctsFor: saidSchema.optional(),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    decide: z.infer<typeof schema>;
  }
}

/**
 * Decides on an attempt, criterion by criterion, whatever the bench proposed. Until it is sealed another decision takes
 * its place; after that only a correction, which points to it and says why.
 */
export const decide: Act<"decide"> = {
  schema,
  who: ["assessor"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt: id, criteria: given, says, nextKind, correctsFor = "" }) =>
    addToAttempt(core, actor, id, (attempt, person) => {
      const { decision, verdict, records } = attempt;
      const refused = whyNotDecided(attempt);
      if (refused) return refused;
      if (!verdict) return refuse("not-handed-in");
      const isSealed = decision !== undefined && decision.sealedWallMs !== null;
      if (isSealed && correctsFor === "") return refuse("decision-sealed");
      const criteria = judgedCriteria(core.parts.criteria, verdict, given);
      if ("ok" in criteria) return criteria;
      const outcome = outcomeOf(criteria);
      const criteriaHash = records.log.keepDocument("criteria", bytesOfCriteria(core.parts.criteria));
      return {
        type: "decided",
        content: {
          person,
          criteriaHash,
          criteria,
          outcome,
          says,
          ...(nextKind && outcome !== "met" ? { nextKind } : {}),
          ...(isSealed ? { corrects: { hash: decision.hash, why: correctsFor } } : {}),
        },
      };
    }),
};
