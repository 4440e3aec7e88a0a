import type { AttemptCursor } from "./attempt-order.ts";
import type { AttemptFilter, AttemptReader } from "./attempt-reader.ts";
import type { AttemptRecord } from "./attempt-record.ts";

const pageSize = 500;

/** Every attempt of a list, a page at a time: nothing holds the records while a slow reader takes it. */
export function* eachAttempt(attempts: AttemptReader, filter: AttemptFilter): Generator<AttemptRecord> {
  let after: AttemptCursor | undefined;
  do {
    const page = attempts.page(filter, pageSize, after);
    yield* page.attempts;
    after = page.next;
  } while (after);
}
