import { z } from "zod";
import { textSchema } from "../../shared/text/text.schema.ts";
import type { Proposal } from "../../shared/protocol/decision-words.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";

/** What of the bench's verdict a criterion is about; one without it is for a person's eyes alone. */
export const criterionSources = ["danger", "fix", "requirements", "tests"] as const;

export const criteriaSchema = z.strictObject({
  id: z.string().min(1).max(64),
  title: textSchema,
  /** Invented, for a demonstration. */
  isDemo: z.literal(true).optional(),
  criteria: z
    .array(
      z.strictObject({
        id: z.string().min(1).max(64),
        text: textSchema,
        proposedBy: z.enum(criterionSources).optional(),
      }),
    )
    .min(1)
    .max(60)
    .refine((all) => new Set(all.map(({ id }) => id)).size === all.length, "each id once"),
});
export type Criteria = z.infer<typeof criteriaSchema>;
export type Criterion = Criteria["criteria"][number];

/** The text of the criteria as the log keeps it. */
export const bytesOfCriteria = (criteria: Criteria): Uint8Array =>
  Buffer.from(JSON.stringify(criteria), "utf8");

const testRules: ReadonlySet<string> = new Set(["test-missing", "test-order", "reading-misjudged"]);

type Judgement = Pick<Verdict, "findings" | "undetermined" | "requirements">;

const ofFindings = (isFault: boolean, { undetermined }: Judgement): Proposal =>
  isFault ? "not-yet" : undetermined.length > 0 ? "cannot-say" : "met";

/** What the bench proposes for a criterion, by the verdict of the hand-in; null where it has nothing to say. */
export function proposalFor({ proposedBy }: Criterion, verdict: Judgement): Proposal | null {
  switch (proposedBy) {
    case undefined:
      return null;
    case "danger":
    case "fix":
      return ofFindings(
        verdict.findings.some(({ weight, rule }) => weight === proposedBy && !testRules.has(rule)),
        verdict,
      );
    case "tests":
      return verdict.findings.some(({ rule }) => testRules.has(rule)) ? "not-yet" : "met";
    case "requirements": {
      const answers = verdict.requirements.map(({ answer }) => answer);
      if (answers.includes("not-yet")) return "not-yet";
      return answers.includes("cannot-say") ? "cannot-say" : "met";
    }
  }
}
