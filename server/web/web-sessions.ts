import { createHash, randomBytes } from "node:crypto";
import { v7 as uuidV7 } from "uuid";
import type { People } from "../people/people.ts";
import { isStaff, type Staff } from "../people/person.ts";

/** Somebody of the staff who has signed in from the network. */
export interface WebSession {
  /** As the log names it; it opens nothing. */
  readonly logId: string;
  readonly personId: string;
  readonly begunMs: number;
  touchedMs: number;
}

const idleMs = 15 * 60_000;
const longestMs = 8 * 3_600_000;
/** So many at once; the one that was used longest ago ends first. */
const most = 200;
const idBytes = 32;

const keyOf = (id: string): string => createHash("sha256").update(id).digest("hex");

/**
 * Who is signed in from the network. The id is random and made at each sign-in, never taken from a browser; only its
 * hash is kept, in memory: a restart signs everybody out. A session ends when nothing is done in it, when it is old, or
 * when its person is no longer on the list.
 */
export class WebSessions {
  readonly #people: People;
  readonly #nowMs: () => number;
  readonly #sessions = new Map<string, WebSession>();

  /** `nowMs` is a clock that is never set back. */
  constructor(people: People, nowMs: () => number) {
    this.#people = people;
    this.#nowMs = nowMs;
  }

  /** Signs somebody in; gives the new id for the cookie, and the session. */
  begin({ id: personId }: Staff): { id: string; session: WebSession } {
    const id = randomBytes(idBytes).toString("base64url");
    const nowMs = this.#nowMs();
    const session = { logId: uuidV7(), personId, begunMs: nowMs, touchedMs: nowMs };
    this.#sessions.set(keyOf(id), session);
    for (const key of this.#sessions.keys()) {
      if (this.#sessions.size <= most) break;
      this.#sessions.delete(key);
    }
    return { id, session };
  }

  /** Who is signed in under an id now; undefined where nobody is any more. */
  staffOf(id: string | undefined): { staff: Staff; session: WebSession } | undefined {
    if (id === undefined) return undefined;
    const key = keyOf(id);
    const session = this.#sessions.get(key);
    if (!session) return undefined;
    const nowMs = this.#nowMs();
    const isOver = nowMs - session.touchedMs > idleMs || nowMs - session.begunMs > longestMs;
    const person = isOver ? undefined : this.#people.byId(session.personId);
    if (person && isStaff(person)) return { staff: person, session };
    this.#sessions.delete(key);
    return undefined;
  }

  /** Something was done in a session: it is not idle. */
  touch(id: string): void {
    const key = keyOf(id);
    const session = this.#sessions.get(key);
    if (!session) return;
    session.touchedMs = this.#nowMs();
    // Keeps the map in the order of use.
    this.#sessions.delete(key);
    this.#sessions.set(key, session);
  }

  end(id: string): void {
    this.#sessions.delete(keyOf(id));
  }

  /** Signs somebody out wherever they are signed in. */
  endAllOf(personId: string): void {
    for (const [key, session] of this.#sessions)
      if (session.personId === personId) this.#sessions.delete(key);
  }
}
