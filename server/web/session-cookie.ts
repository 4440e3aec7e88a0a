import type { DoorNames } from "./origin.ts";

type Scheme = DoorNames["scheme"];

/** Over https a name that a browser takes from this host alone, and over an encrypted link alone. */
const nameFor = (scheme: Scheme): string => (scheme === "https" ? "__Host-spurwise" : "spurwise");

const attributesFor = (scheme: Scheme): string =>
  `; Path=/; HttpOnly; SameSite=Strict${scheme === "https" ? "; Secure" : ""}`;

/** The header that gives a browser a session's id; no script of a page can read it. */
export const cookieWith = (id: string, scheme: Scheme): string =>
  `${nameFor(scheme)}=${id}${attributesFor(scheme)}`;

/** The header that takes it away again. */
export const cookieGone = (scheme: Scheme): string =>
  `${nameFor(scheme)}=${attributesFor(scheme)}; Max-Age=0`;

/** The session's id of a `Cookie` header; where it is there twice, nobody's. */
export function idOfCookie(header: string | undefined, scheme: Scheme): string | undefined {
  const start = `${nameFor(scheme)}=`;
  const ids = (header ?? "")
    .split(";")
    .map((pair) => pair.trim())
    .filter((pair) => pair.startsWith(start))
    .map((pair) => pair.slice(start.length));
  return ids.length === 1 ? ids[0] : undefined;
}
