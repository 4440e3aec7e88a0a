import type { IncomingHttpHeaders } from "node:http";
import { hostname, networkInterfaces } from "node:os";

/** Under which names a door is asked for, and how. */
export interface DoorNames {
  scheme: "http" | "https";
  /** Names and addresses, IPv6 ones in brackets. */
  hosts: () => ReadonlySet<string>;
}

const loopbackHosts: ReadonlySet<string> = new Set(["127.0.0.1", "localhost", "[::1]"]);

/** Where a door that is let into the network listens when no address is said. */
export const everyAddress = "0.0.0.0";

/** The names of the door that only this machine comes through. */
export const loopbackNames: DoorNames = { scheme: "http", hosts: () => loopbackHosts };

/**
 * The names of a bench on a network: its addresses as they are now, its machine's name, and those that whoever set it
 * up gave it.
 */
export function networkHosts(given: readonly string[]): ReadonlySet<string> {
  const addresses = Object.values(networkInterfaces())
    .flatMap((found) => found ?? [])
    .map(({ address }) => (address.includes(":") ? `[${address}]` : address));
  const own = hostname().toLowerCase();
  return new Set([...addresses, own, `${own}.local`, ...given.map((name) => name.toLowerCase())]);
}

const nameOf = (host: string): string => host.replace(/:\d+$/, "").toLowerCase();

/**
 * True where a request is for this bench and comes from a page of it, or from no page at all. A browser says where a
 * page came from; a page of another origin must not steer the bench. The name that was asked for must be one of the
 * bench's own, so that no other site can point its name at the bench.
 */
export function isOwnOrigin(headers: IncomingHttpHeaders, { scheme, hosts }: DoorNames): boolean {
  const { host, origin } = headers;
  if (host === undefined || !hosts().has(nameOf(host))) return false;
  if (origin === undefined) {
    const site = headers["sec-fetch-site"];
    return site === undefined || site === "same-origin" || site === "none";
  }
  return origin === `${scheme}://${host}`;
}
