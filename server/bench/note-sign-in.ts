import type { Staff } from "../people/person.ts";
import type { BenchCore } from "./bench-core.ts";

/**
 * Puts into the log who of the staff signed in, by what they showed and where: what they do then names the session.
 *
 * @throws StoreError; then nobody is signed in.
 */
export function noteSignIn(
  { parts }: BenchCore,
  { id: person, role }: Staff,
  session: string,
  by: "pin" | "badge",
  at: "own-screen" | "network",
): void {
  const content = { person, role, with: by, at };
  parts.records?.log.append([
    { attemptId: null, type: "staff-signed-in", author: { by: role, session }, content },
  ]);
}
