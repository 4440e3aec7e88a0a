import { actorRoles, type ActorRole, type Author, staffRoles } from "../../shared/protocol/author.ts";

/** Who sends an act: a part in the workshop, or nobody where nobody is signed in. */
export const actors = ["nobody", ...actorRoles] as const;
export type ActorKind = "nobody" | ActorRole;

/** Whoever sends an act, as their session knows them. */
export interface Actor {
  kind: ActorKind;
  /** Opaque; null for everybody but a learner. */
  learner: string | null;
  session: string | null;
  /** Their id, where they are of the staff. */
  staff?: string;
  /** They are on the network, not at the bench. */
  isRemote?: true;
}

/** A socket or a request, and whoever stands behind it when it is asked. */
export interface ActorSession {
  readonly actor: Actor;
  /** Something is done in it: it is not idle. */
  touch?(): void;
}

/** The author of what an actor does; nobody does nothing that is logged. */
export const authorOf = ({ kind, session }: Actor): Author =>
  kind === "nobody" ? { by: "bench", session: null } : { by: kind, session };

/** Whoever works at the bench. */
export const workers: readonly ActorKind[] = ["learner", "guest"];

/** Whoever stands at the bench, signed in or not. */
export const anybodyAtBench: readonly ActorKind[] = ["nobody", "learner", "guest", ...staffRoles];

const staffKinds: ReadonlySet<ActorKind> = new Set(staffRoles);

/** One of the staff. */
export const isStaffKind = (kind: ActorKind): boolean => staffKinds.has(kind);

/** Whoever may let people in. */
export const keepers: readonly ActorKind[] = ["trainer", "technician"];
