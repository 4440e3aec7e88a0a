import type { Session } from "./session.ts";
import type { Work } from "./work.ts";

/** Somebody has signed in to work at the bench, or has work lying open on it. */
export const isBenchInUse = ({ work, session }: { work: Work; session: Session }): boolean =>
  work.isOpen || work.toResume !== undefined || session.person !== null;
