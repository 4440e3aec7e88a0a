import type { Moment } from "../../shared/protocol/desk-view.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import { pictureOf } from "../attempt/picture-of.ts";
import { reduce } from "../attempt/reduce.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { ReplayParts } from "./replay.ts";

/** After these the board, a size, a setting or what was measured may be another. */
const changing = new Set<AttemptEvent["type"]>([
  "sensed",
  "changed-while-off",
  "setting",
  "reading-recorded",
  "ready",
  "handed-in",
  "resumed",
]);

/** Goes through the rows of an attempt: each event with what is wrong after it, judged as it would be today. */
export class MomentWalk {
  readonly moments: Moment[] = [];
  #rowCount = 0;
  #state: AttemptState | undefined;
  #findings: string[] = [];
  #drawn = "";
  readonly #parts: ReplayParts;
  readonly #attemptId: string;

  constructor(parts: ReplayParts, attemptId: string) {
    this.#parts = parts;
    this.#attemptId = attemptId;
  }

  /** How many rows were gone through. */
  get rowCount(): number {
    return this.#rowCount;
  }

  /** Takes the next row. */
  take(row: LogRow): void {
    const at = this.#rowCount;
    this.#rowCount += 1;
    const event = eventOfRow(row);
    if (!event) return;
    this.#state = reduce(this.#state, this.#attemptId, event);
    let isChange = false;
    if (this.#state && changing.has(event.type)) {
      const { wiring, verdict } = pictureOf(this.#parts, this.#state.plugged, this.#state).judged();
      const drawn = JSON.stringify([wiring.cables, wiring.stations]);
      isChange = drawn !== this.#drawn;
      this.#drawn = drawn;
      this.#findings = verdict.findings.filter(({ weight }) => isToMend(weight)).map(({ id }) => id);
    }
    this.moments.push({ at, type: row.type, wallMs: row.wallMs, isChange, findings: this.#findings });
  }
}

/** So many attempts are kept in mind; then it begins anew. */
const mostKnown = 20;
const walksOf = new WeakMap<LogReader, Map<string, MomentWalk>>();

function walkOf(log: LogReader, parts: ReplayParts, attemptId: string): MomentWalk {
  const known = walksOf.get(log) ?? new Map<string, MomentWalk>();
  walksOf.set(log, known);
  const before = known.get(attemptId);
  if (before) return before;
  if (known.size >= mostKnown) known.clear();
  const walk = new MomentWalk(parts, attemptId);
  known.set(attemptId, walk);
  return walk;
}

/**
 * The moments of an attempt by its rows. What is known of it from before is not judged again, and between two moments the
 * bench does what else there is to do: a long afternoon's work takes seconds.
 */
export async function momentsOf(
  log: LogReader,
  parts: ReplayParts,
  attemptId: string,
  rows: readonly LogRow[],
): Promise<Moment[]> {
  const walk = walkOf(log, parts, attemptId);
  // Somebody else may go on with the same walk meanwhile.
  for (let row = rows[walk.rowCount]; row; row = rows[walk.rowCount]) {
    walk.take(row);
    await new Promise((resolve) => setImmediate(resolve));
  }
  return walk.moments;
}
