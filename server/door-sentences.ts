import { hostname } from "node:os";
import type { ServerParts } from "./create-server.ts";

const isLoopback = (host: string): boolean =>
  host === "localhost" || host === "::1" || host.startsWith("127.");

/** What whoever started the bench has to know of who may come in, a sentence each. */
export function doorSentences(
  { bench, network }: ServerParts,
  askedHost: string | undefined,
  networkPort: number | undefined,
): string[] {
  const { firstStartCode, isDemonstration } = bench.people;
  const sentences: string[] = [];
  if (isDemonstration)
    sentences.push(
      "a demonstration: the people are invented. Set up its first person to make the bench yours.",
    );
  if (firstStartCode !== undefined)
    sentences.push(
      `nobody is set up yet. On the bench, Menu, Staff: the first-start code is ${firstStartCode}`,
    );
  if (network && networkPort !== undefined) {
    const { tls } = network;
    sentences.push(
      `the network is let in: ${tls ? "https" : "http"}://${hostname()}:${networkPort} (only for who signs in)`,
    );
    if (!tls)
      sentences.push(
        "that link is not encrypted: whoever is on the network can read PINs and names. npm run certificate makes a certificate.",
      );
  } else if (!network && askedHost !== undefined && !isLoopback(askedHost))
    sentences.push(
      `SPURWISE_HOST is ${askedHost}, but nobody has let the network in: the bench listens to this machine alone. A technician opens it on the bench's screen (Menu, Staff).`,
    );
  return sentences;
}
