import { z } from "zod";
import { modes } from "../../shared/protocol/attempt-words.ts";
import { listColumns } from "../../shared/protocol/desk-view.ts";
import { outcomes } from "../../shared/protocol/decision-words.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { People } from "../people/people.ts";
import type { AttemptFilter } from "../store/attempt-reader.ts";

const id = z.string().min(1).max(64);
/** A day as a form writes it. */
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

/** What narrows a list of attempts, as it stands in an address; all of it may be left out. */
const querySchema = z.strictObject({
  /** A part of a learner's name or centre number. */
  learner: z.string().trim().min(1).max(60).optional(),
  scenario: id.optional(),
  mode: z.enum(modes).optional(),
  status: z.enum(["open", "ready", "handed-in", "left"]).optional(),
  decision: z.enum([...outcomes, "none"]).optional(),
  /** From this day on, and up to and with that one; days of UTC. */
  from: day.optional(),
  to: day.optional(),
  after: z.string().min(1).max(200).optional(),
  /** What the list is put in order by, and whether it goes up; down where that is not said. */
  sort: z.enum(listColumns).optional(),
  order: z.enum(["up", "down"]).optional(),
  language: z.string().optional(),
});
export type DeskQuery = z.infer<typeof querySchema>;

const dayMs = 24 * 3600 * 1000;
const startOf = (text: string): number => Date.parse(`${text}T00:00:00Z`);

/** What an address asks for; undefined where that is no list of attempts. */
export function readDeskQuery(query: unknown): DeskQuery | undefined {
  const parsed = parseSafely(querySchema, query);
  if (!parsed.success) return undefined;
  const days = [parsed.data.from, parsed.data.to].flatMap((text) => (text === undefined ? [] : [text]));
  return days.some((text) => Number.isNaN(startOf(text))) ? undefined : parsed.data;
}

/** The list that is asked for; names are looked up, since the log has none. */
export function filterOf(
  { learner, scenario, mode, status, decision, from, to }: DeskQuery,
  people: Pick<People, "learnersLike">,
): AttemptFilter {
  return {
    ...(learner === undefined ? {} : { learners: people.learnersLike(learner) }),
    ...(scenario === undefined ? {} : { scenario }),
    ...(mode === undefined ? {} : { mode }),
    ...(status === undefined ? {} : { status }),
    ...(decision === "none" ? { isDecided: false } : decision === undefined ? {} : { decision }),
    ...(from === undefined ? {} : { fromWallMs: startOf(from) }),
    ...(to === undefined ? {} : { beforeWallMs: startOf(to) + dayMs }),
  };
}
