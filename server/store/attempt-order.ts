import type { AttemptRecord } from "./attempt-record.ts";

/** What a list may be put in the order of, besides when its attempts were started. */
export type OrderColumn = "learner" | "scenario" | "mode" | "status" | "proposal" | "decision";

/** Where a page of attempts ended; the next one begins after it. In the order of a column it has what that said. */
export type AttemptCursor = Pick<AttemptRecord, "benchId" | "startBoot" | "startSequence"> &
  Partial<Record<OrderColumn, string | null>>;

const placeColumns = ["bench_id", "start_boot", "start_sequence"];

/** The order of the log as it stands in a query, the last started first or turned round, and what comes behind a cursor. */
export const startOrder = (isFirstFirst: boolean): { order: string; follows: string } => {
  const direction = isFirstFirst ? "ASC" : "DESC";
  return {
    order: `ORDER BY ${placeColumns.map((column) => `${column} ${direction}`).join(", ")}`,
    follows: `(${placeColumns.join(", ")}) ${isFirstFirst ? ">" : "<"} (@benchId, @startBoot, @startSequence)`,
  };
};
