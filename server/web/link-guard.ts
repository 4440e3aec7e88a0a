import type { IncomingMessage } from "node:http";
import type { Socket } from "node:net";
import type { Clock } from "../clock/clock.ts";
import { RateBucket } from "./rate-bucket.ts";
import { RateByAddress } from "./rate-by-address.ts";

/** What a door holds at once, and how fast a link or an address may go on. */
export const linkLimits = {
  links: 48,
  linksOfAddress: 16,
  /** What waits for a screen that does not read; a whole view of the largest board is a tenth of it. */
  backlogBytes: 512 * 1024,
  newLinks: { burst: 30, perSecond: 5 },
  packets: { burst: 300, perSecond: 100 },
  /** What a screen sends is some hundred bytes an act; the largest message is 64 kB. */
  bytes: { burst: 512 * 1024, perSecond: 64 * 1024 },
} as const;

/** The link of a screen as the library below the sockets has it. */
export interface RawLink {
  request: IncomingMessage;
  on: (
    event: "packet" | "packetCreate" | "flush" | "close",
    hear: (packet: { data?: unknown }) => void,
  ) => unknown;
}

export type LinkFault = "backlog" | "flood";

/** Who is told that a link ends has so long to answer; who does not read does not. */
const farewellMs = 1000;

const addressOf = ({ socket }: IncomingMessage): string => socket.remoteAddress ?? "";

const lengthOf = (data: unknown): number =>
  typeof data === "string" ? data.length : ArrayBuffer.isView(data) ? data.byteLength : 0;

/**
 * Counts the links of one door. A link more than the door or one address may have is not let in; one that does not read
 * what it is sent, or sends without end, is dropped: nobody takes the memory or the time of the bench.
 */
export class LinkGuard {
  readonly #nowMs: () => number;
  readonly #dropped: (fault: LinkFault, address: string) => void;
  readonly #newLinks: RateByAddress;
  readonly #open = new Map<Socket, string>();

  /** `dropped` is called with each link that was ended. */
  constructor(clock: Clock, dropped: (fault: LinkFault, address: string) => void) {
    this.#nowMs = () => clock.monotonicMs();
    this.#dropped = dropped;
    const { burst, perSecond } = linkLimits.newLinks;
    this.#newLinks = new RateByAddress(burst, perSecond, this.#nowMs);
  }

  /** True where there is room for the link that a request asks for; it counts until its connection has ended. */
  admits(request: IncomingMessage): boolean {
    const address = addressOf(request);
    const ofAddress = [...this.#open.values()].filter((one) => one === address).length;
    if (this.#open.size >= linkLimits.links || ofAddress >= linkLimits.linksOfAddress) return false;
    if (!this.#newLinks.take(address)) return false;
    const { socket } = request;
    this.#open.set(socket, address);
    socket.once("close", () => this.#open.delete(socket));
    return true;
  }

  /** Watches a link from its first packet on. */
  watch(link: RawLink): void {
    const { socket } = link.request;
    const address = addressOf(link.request);
    const bucketOf = ({ burst, perSecond }: { burst: number; perSecond: number }): RateBucket =>
      new RateBucket(burst, perSecond, this.#nowMs);
    const packets = bucketOf(linkLimits.packets);
    const bytes = bucketOf(linkLimits.bytes);
    let isDropped = false;
    const drop = (fault: LinkFault): void => {
      if (isDropped) return;
      isDropped = true;
      // A farewell would wait behind all that is not read.
      socket.destroy();
      this.#dropped(fault, address);
    };
    link.on("packet", ({ data }) => {
      if (!packets.take() || !bytes.take(lengthOf(data))) drop("flood");
    });
    let waitingBytes = 0;
    link.on("packetCreate", ({ data }) => {
      waitingBytes += lengthOf(data);
      if (waitingBytes + socket.writableLength > linkLimits.backlogBytes) drop("backlog");
    });
    // What is handed on waits in the connection from then on.
    link.on("flush", () => (waitingBytes = 0));
    link.on("close", () => void setTimeout(() => socket.destroy(), farewellMs).unref());
  }

  /** Ends every link that is still there. */
  endAll(): void {
    for (const socket of this.#open.keys()) socket.destroy();
  }
}
