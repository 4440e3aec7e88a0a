import type { IncomingHttpHeaders } from "node:http";

const loopbackNames = new Set(["127.0.0.1", "localhost", "[::1]"]);

const nameOf = (host: string): string => host.replace(/:\d+$/, "");

/**
 * True where a request comes from a page of this bench, or from no page at all. A browser says where a page
 * came from; a page of another origin must not steer the bench. On loopback the name must be a loopback name
 * too, so that no other site can point its own name at the bench.
 */
export function isOwnOrigin(headers: IncomingHttpHeaders, isLoopbackOnly: boolean): boolean {
  const { host, origin } = headers;
  if (host === undefined) return false;
  if (isLoopbackOnly && !loopbackNames.has(nameOf(host))) return false;
  if (origin === undefined) {
    const site = headers["sec-fetch-site"];
    return site === undefined || site === "same-origin" || site === "none";
  }
  return origin === `http://${host}` || origin === `https://${host}`;
}
