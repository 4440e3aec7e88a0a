import type { IncomingMessage } from "node:http";
import type { Actor } from "../acts/actor.ts";
import type { Staff } from "../people/person.ts";
import type { ScreenSession } from "./attach-sockets.ts";
import { type DoorNames, loopbackNames } from "./origin.ts";
import { idOfCookie } from "./session-cookie.ts";
import type { WebSessions } from "./web-sessions.ts";

/**
 * A way into the bench. Through the one on loopback comes its own screen, which anybody may stand at; through the one
 * on the network only who has signed in.
 */
export type Door =
  { kind: "own-screen"; names: DoorNames } | { kind: "network"; names: DoorNames; sessions: WebSessions };

export const ownDoor: Door = { kind: "own-screen", names: loopbackNames };

/** Who of the staff has signed in, for a request through the door on the network. */
export const staffAt = (door: Door, headers: IncomingMessage["headers"]): Staff | undefined =>
  door.kind === "own-screen"
    ? undefined
    : door.sessions.staffOf(idOfCookie(headers.cookie, door.names.scheme))?.staff;

/** A screen on the network: whoever signed in, looked up anew with each message. */
export class RemoteSession implements ScreenSession {
  readonly audience = "remote";
  readonly #sessions: WebSessions;
  readonly #id: string;

  constructor(sessions: WebSessions, id: string) {
    this.#sessions = sessions;
    this.#id = id;
  }

  get staff(): Staff | null {
    return this.#sessions.staffOf(this.#id)?.staff ?? null;
  }

  /** False once it has ended: then nothing more is sent there. */
  get isLive(): boolean {
    return this.staff !== null;
  }

  get actor(): Actor {
    const found = this.#sessions.staffOf(this.#id);
    if (!found) return { kind: "nobody", learner: null, session: null, isRemote: true };
    const { staff, session } = found;
    return { kind: staff.role, learner: null, session: session.logId, staff: staff.id, isRemote: true };
  }

  touch(): void {
    this.#sessions.touch(this.#id);
  }
}
