import { modes } from "../../shared/protocol/attempt-words.ts";
import type { ListColumn } from "../../shared/protocol/desk-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import { byId } from "../../shared/board/ids.ts";
import type { BenchParts, Records } from "../bench/bench-core.ts";
import type { AttemptCursor, OrderColumn } from "../store/attempt-order.ts";
import type { AttemptFilter } from "../store/attempt-reader.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import { nameOf } from "./desk-rows.ts";

/** How a list is to stand, and whose words its order follows. */
export interface WantedOrder {
  by: ListColumn;
  isUp: boolean;
  language: Language;
}

type SortedBy = WantedOrder & { by: Exclude<ListColumn, "started"> };

interface Page {
  attempts: AttemptRecord[];
  next: AttemptRecord | undefined;
}
type Parts = Pick<BenchParts, "people" | "scenarios">;
type Attempts = Records["attempts"];

/** The column of the records that a column of the list shows; when it was started is the order of the log itself. */
const columnOf: Record<Exclude<ListColumn, "started">, OrderColumn> = {
  learner: "learner",
  task: "scenario",
  mode: "mode",
  status: "status",
  proposed: "proposal",
  decision: "decision",
};

/** From what comes first in the course of the work, and from the worst to the best. */
const inMeaning: Record<"mode" | "status" | "proposed" | "decision", readonly (string | null)[]> = {
  mode: modes,
  status: ["open", "ready", "handed-in", "left"],
  proposed: [null, "not-yet", "cannot-say", "met"],
  decision: [null, "not-yet", "cannot-assess", "met"],
};

type Value = string | null;

/** What a column says, in the order of the list: a task that is not there any more comes last, up and down. */
function comparison(parts: Parts, { by, isUp, language }: SortedBy): (a: Value, b: Value) => number {
  const { compare } = new Intl.Collator(language);
  if (by === "learner") {
    const names = parts.people.learnerNames();
    // Guests have no name and stand before all others.
    const name = (id: Value) => (id === null ? "" : (names.get(id) ?? nameOf(parts, id)));
    return (a, b) => (isUp ? 1 : -1) * (compare(name(a), name(b)) || byId(a ?? "", b ?? ""));
  }
  const up = by === "task" ? tasksInOrder(parts, language) : inMeaning[by];
  const places = new Map((isUp ? up : up.toReversed()).map((value, place) => [value, place]));
  const place = (value: Value) => places.get(value) ?? places.size;
  return (a, b) => place(a) - place(b) || byId(a ?? "", b ?? "");
}

const tasksInOrder = ({ scenarios }: Parts, language: Language): string[] => {
  const { compare } = new Intl.Collator(language);
  return [...scenarios.kits.values()]
    .map(({ scenario }) => scenario)
    .sort((a, b) => compare(a.title[language], b.title[language]) || byId(a.id, b.id))
    .map(({ id }) => id);
};

/** What a column says, those first that cost no look through all attempts: most tasks have some, most outcomes none. */
function* valuesOf(parts: Parts, attempts: Attempts, filter: AttemptFilter, wanted: SortedBy) {
  const compare = comparison(parts, wanted);
  if (wanted.by !== "task") return yield* attempts.valuesOf(columnOf[wanted.by], filter).sort(compare);
  const known: Value[] = tasksInOrder(parts, wanted.language);
  yield* known.sort(compare);
  const others = attempts.valuesOf("scenario", filter).filter((value) => !known.includes(value));
  yield* others.sort(compare);
}

/** So many attempts are put in order at once; of more, those that say the same are found one after the other. */
const fewCount = 500;

const isBehind = (a: AttemptRecord, b: AttemptCursor): boolean =>
  (byId(b.benchId, a.benchId) || b.startBoot - a.startBoot || b.startSequence - a.startSequence) > 0;

const cut = (found: readonly AttemptRecord[], limit: number): Page => {
  const attempts = found.slice(0, limit);
  return { attempts, next: found.length > limit ? attempts.at(-1) : undefined };
};

/** One page of a list in the order that is wanted; the last started first where none is. @throws StoreError */
export function sortedPage(
  parts: Parts,
  attempts: Attempts,
  filter: AttemptFilter,
  limit: number,
  after?: AttemptCursor,
  wanted?: WantedOrder,
): Page {
  if (!wanted || wanted.by === "started") return attempts.page(filter, limit, after, wanted?.isUp);
  const sortedBy = { ...wanted, by: wanted.by };
  const column = columnOf[wanted.by];
  const compare = comparison(parts, sortedBy);
  /** Below zero before the page begins, 0 where it begins among those that say the same. */
  const fromCursor = (value: Value) => (after ? compare(value, after[column] ?? null) : 1);
  const few = Object.keys(filter).length > 0 ? attempts.page(filter, fewCount) : undefined;
  if (few && !few.next) {
    const inOrder = few.attempts.sort((a, b) => compare(a[column], b[column]));
    const isAfter = (one: AttemptRecord) =>
      fromCursor(one[column]) > 0 || (fromCursor(one[column]) === 0 && after && isBehind(one, after));
    return cut(inOrder.filter(isAfter), limit);
  }
  const found: AttemptRecord[] = [];
  for (const value of valuesOf(parts, attempts, filter, sortedBy)) {
    const at = fromCursor(value);
    if (at < 0) continue;
    const says = { column, value };
    const wantedCount = limit + 1 - found.length;
    found.push(...attempts.page({ ...filter, says }, wantedCount, at === 0 ? after : undefined).attempts);
    if (found.length > limit) break;
  }
  return cut(found, limit);
}

/** What a cursor has to carry for the page behind it. */
export const cursorValue = (record: AttemptRecord, by: ListColumn | undefined): string | null | undefined =>
  by === undefined || by === "started" ? undefined : record[columnOf[by]];

/** The cursor with what its column said. */
export const cursorWith = (
  place: AttemptCursor,
  by: ListColumn | undefined,
  value: string | null,
): AttemptCursor => (by === undefined || by === "started" ? place : { ...place, [columnOf[by]]: value });
