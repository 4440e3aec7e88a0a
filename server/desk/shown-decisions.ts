import { z } from "zod";
import type { Author, StaffRole } from "../../shared/protocol/author.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Staff } from "../people/person.ts";
import { eventOfBytes } from "../store/event-bytes.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { LogWriter } from "../store/log-writer.ts";

/** One of the staff at a desk, and whom the log names for what is shown there. */
export interface Viewer {
  staff: Staff;
  author: Author;
}

interface ShownParts {
  records: { log: LogWriter; logReader: LogReader } | undefined;
  /** Does something with the records; what stands in their way is said, not thrown. */
  guard: (act: () => void) => void;
}

/** Who may give a second view of work that others decided on. */
const secondViewers: readonly StaffRole[] = ["assessor", "verifier"];

const takenSchema = z.object({ person: z.string() });

type Decided = Pick<AttemptRecord, "attemptId" | "decision" | "decidedBy" | "decidedWallMs">;

/**
 * Whom the desk has shown a decision: they can no longer give a blind view of it. It stands in the log, as an event of
 * the attempt or, for a file of very many, as one of its own; where the disk takes nothing it is known until the bench stops.
 */
export class ShownDecisions {
  readonly #parts: ShownParts;
  readonly #shown = new Set<string>();
  #takenUntilMs: Map<string, number> | undefined;

  constructor(parts: ShownParts) {
    this.#parts = parts;
  }

  /** They are shown what was decided on these attempts. */
  add({ staff, author }: Viewer, attempts: readonly Decided[]): void {
    const told = attempts.filter((attempt) => this.#couldViewBlind(staff, attempt));
    for (const { attemptId } of told) this.#shown.add(`${staff.id} ${attemptId}`);
    if (told.length === 0) return;
    const content = { person: staff.id };
    this.#parts.guard(() => {
      this.#parts.records?.log.append(
        told.map(({ attemptId }) => ({ attemptId, type: "decision-shown", author, content })),
      );
    });
  }

  /** They take more decisions with them than are told one by one: all that were made up to that time. */
  addAll({ staff, author }: Viewer, wallMs: number): void {
    if (!secondViewers.includes(staff.role)) return;
    this.#taken().set(staff.id, wallMs);
    const content = { person: staff.id };
    this.#parts.guard(() => {
      this.#parts.records?.log.append([{ attemptId: null, type: "decisions-taken", author, content }]);
    });
  }

  /** Whether somebody was shown a decision, or one that was made at that time may have been among all that they took. */
  has(person: string, attemptId: string, decidedWallMs: number): boolean {
    const key = `${person} ${attemptId}`;
    const untilMs = this.#taken().get(person);
    if (this.#shown.has(key) || (untilMs !== undefined && decidedWallMs <= untilMs)) return true;
    const rows = this.#parts.records?.logReader.rowsOfShown(attemptId) ?? [];
    const isShown = rows.some(({ bytes }) => personOf(bytes) === person);
    if (isShown) this.#shown.add(key);
    return isShown;
  }

  /** Whether somebody could still give a blind view of an attempt. */
  #couldViewBlind({ id, role }: Staff, { attemptId, decision, decidedBy, decidedWallMs }: Decided): boolean {
    if (!secondViewers.includes(role) || decision === null || decidedBy === id) return false;
    return !this.has(id, attemptId, decidedWallMs ?? 0);
  }

  /** Until when somebody took all decisions with them. */
  #taken(): Map<string, number> {
    this.#takenUntilMs ??= new Map(
      (this.#parts.records?.logReader.rowsApartOfType("decisions-taken") ?? []).map(({ bytes, wallMs }) => [
        personOf(bytes) ?? "",
        wallMs,
      ]),
    );
    return this.#takenUntilMs;
  }
}

function personOf(bytes: Uint8Array): string | undefined {
  const parsed = parseSafely(takenSchema, eventOfBytes(bytes).content);
  return parsed.success ? parsed.data.person : undefined;
}
