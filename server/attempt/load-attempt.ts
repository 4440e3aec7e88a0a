import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfBytes } from "../store/event-bytes.ts";
import { type AttemptEvent, attemptEventSchemas, type AttemptEventType } from "./attempt-events.ts";
import type { AttemptState } from "./attempt-state.ts";
import { reduce } from "./reduce.ts";

const isAttemptEvent = (type: string): type is AttemptEventType => Object.hasOwn(attemptEventSchemas, type);

/**
 * The event of a row of the log, or undefined for one that is not an attempt's or that cannot be read: what is
 * in the log is still what was hashed, and one strange row does not take the bench down.
 */
export function eventOfRow(row: Pick<LogRow, "type" | "bytes">): AttemptEvent | undefined {
  if (!isAttemptEvent(row.type)) return undefined;
  try {
    const parsed = attemptEventSchemas[row.type].safeParse(eventOfBytes(row.bytes).content);
    return parsed.success ? ({ type: row.type, content: parsed.data } as AttemptEvent) : undefined;
  } catch {
    return undefined;
  }
}

/** The attempt that the rows of the log tell, in their order; undefined where its start is missing. */
export function loadAttempt(attemptId: string, rows: readonly LogRow[]): AttemptState | undefined {
  let state: AttemptState | undefined;
  for (const row of rows) {
    const event = eventOfRow(row);
    if (event) state = reduce(state, attemptId, event);
  }
  return state;
}
