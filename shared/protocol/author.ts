/** Who may do something: people by their part in the workshop, and the bench for what it does by itself. */
export const actorRoles = [
  "learner",
  "guest",
  "trainer",
  "assessor",
  "verifier",
  "technician",
  "bench",
] as const;
/** Those who are neither learners nor guests. */
export const staffRoles = ["trainer", "assessor", "verifier", "technician"] as const;
export type StaffRole = (typeof staffRoles)[number];
export type ActorRole = (typeof actorRoles)[number];

/** Who did what an event tells, and through which session; the bench does its own through none. */
export interface Author {
  by: ActorRole;
  session: string | null;
}

/** The author of what the bench does by itself: it starts, senses, finds a fault, sees its clock jump. */
export const byBench: Author = { by: "bench", session: null };
