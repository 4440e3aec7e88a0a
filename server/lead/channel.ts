import { connect, createServer, type Server, type TLSSocket } from "node:tls";

/**
 * The link between a bench and its lead: TLS 1.3 (RFC 8446) with ephemeral X25519 keys. The pre-shared key is public and
 * proves nothing: who is at the other end is proved above it, by signatures or by a pairing code over `binding`, which no
 * other connection has (RFC 5705 keying material, as RFC 9266 binds channels). What is read or changed on the way, sent
 * again or passed on by somebody in between is refused by that.
 */
const publicKeyBytes = Buffer.alloc(32, "spurwise lead 1");
const identity = "spurwise-lead-1";
const bindingLabel = "EXPORTER-spurwise-lead-1";
const bindingBytes = 32;
const tls = {
  minVersion: "TLSv1.3",
  maxVersion: "TLSv1.3",
  ciphers: "TLS_AES_128_GCM_SHA256:TLS_CHACHA20_POLY1305_SHA256",
  ecdhCurve: "X25519",
} as const;

/** A group's pack with its class, tasks and criteria is the longest that is sent. */
export const largestMessageBytes = 8 * 1024 * 1024;
/** Whoever has not proved yet who they are says less. */
export const largestUnprovedBytes = 4096;
/** What the other end does not read is not kept for it. */
const mostUnreadBytes = 2 * largestMessageBytes;
const connectTimeoutMs = 5000;
/** Both ends say something every few seconds; one that says nothing is gone. */
export const silentMs = 10_000;

/** One message a line, as JSON, each way. */
export class Channel {
  /** Thirty-two bytes that only the two ends of this connection have, in hexadecimal. */
  readonly binding: string;
  readonly address: string;
  readonly #socket: TLSSocket;
  #hear: ((message: unknown) => void) | undefined;
  #closed: (() => void) | undefined;
  #isClosed = false;
  readonly #waiting: unknown[] = [];
  #parts: Buffer[] = [];
  #partBytes = 0;
  #largestBytes = largestUnprovedBytes;

  constructor(socket: TLSSocket) {
    this.#socket = socket;
    this.address = socket.remoteAddress ?? "";
    this.binding = socket.exportKeyingMaterial(bindingBytes, bindingLabel, Buffer.alloc(0)).toString("hex");
    socket.setNoDelay(true);
    socket.setTimeout(silentMs, () => this.close());
    // An error of TLS itself, such as a byte changed on the way, leaves the connection open.
    socket.on("error", () => socket.destroy());
    socket.on("close", () => {
      this.#isClosed = true;
      this.#closed?.();
    });
    socket.on("data", (chunk: Buffer) => this.#take(chunk));
    // Nothing is read before somebody listens.
    socket.pause();
  }

  /** Calls back with each message, and once when the link is gone. A line that is no JSON, or too long, ends it. */
  listen(hear: (message: unknown) => void, closed: () => void): void {
    this.#hear = hear;
    this.#closed = closed;
    if (this.#isClosed) return closed();
    this.#drain();
  }

  /** The next message; rejects where the link ends before. For what is said in turn. */
  next(): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const ended = () => reject(new Error("the link has ended"));
      this.listen((message) => {
        this.#hear = undefined;
        this.#closed = undefined;
        resolve(message);
      }, ended);
    });
  }

  /** Who is at the other end has proved it: long messages are taken from now on. */
  trust(): void {
    this.#largestBytes = largestMessageBytes;
  }

  send(message: object): void {
    if (this.#isClosed) return;
    if (this.#socket.writableLength > mostUnreadBytes) return this.close();
    this.#socket.write(`${JSON.stringify(message)}\n`);
  }

  /** Sends a last message and ends. */
  end(message: object): void {
    if (!this.#isClosed) this.#socket.end(`${JSON.stringify(message)}\n`);
  }

  close(): void {
    this.#socket.destroy();
  }

  #take(chunk: Buffer): void {
    let rest = chunk;
    for (let end = rest.indexOf(10); end >= 0 && !this.#socket.destroyed; end = rest.indexOf(10)) {
      if (this.#partBytes + end > this.#largestBytes) return this.close();
      const line = Buffer.concat([...this.#parts, rest.subarray(0, end)]).toString("utf8");
      this.#parts = [];
      this.#partBytes = 0;
      rest = rest.subarray(end + 1);
      let message: unknown;
      try {
        message = JSON.parse(line);
      } catch {
        return this.close();
      }
      this.#waiting.push(message);
    }
    this.#partBytes += rest.length;
    if (this.#partBytes > this.#largestBytes) return this.close();
    if (rest.length > 0) this.#parts.push(rest);
    this.#drain();
  }

  /** Tells what has come to whoever listens; while nobody does, nothing more is read. */
  #drain(): void {
    while (this.#hear && this.#waiting.length > 0) this.#hear(this.#waiting.shift());
    if (this.#hear) this.#socket.resume();
    else this.#socket.pause();
  }
}

/** Opens a link to a lead. Rejects where nobody answers there. */
export function openChannel(host: string, port: number): Promise<Channel> {
  return new Promise((resolve, reject) => {
    const socket = connect({
      ...tls,
      host,
      port,
      pskCallback: () => ({ psk: publicKeyBytes, identity }),
      checkServerIdentity: () => undefined,
    });
    const late = setTimeout(() => socket.destroy(new Error("nobody answers there")), connectTimeoutMs);
    socket.once("error", reject);
    socket.once("close", () => reject(new Error("the link has ended")));
    socket.once("secureConnect", () => {
      clearTimeout(late);
      resolve(new Channel(socket));
    });
    socket.once("close", () => clearTimeout(late));
  });
}

const mostLinks = 64;

/** Takes links of benches; nothing is known of who is at the other end. It does not listen yet. */
export function takeChannels(taken: (channel: Channel) => void): Server {
  const server = createServer({
    ...tls,
    pskCallback: (_, name) => (name === identity ? publicKeyBytes : null),
    handshakeTimeout: connectTimeoutMs,
  });
  server.maxConnections = mostLinks;
  server.on("secureConnection", (socket) => taken(new Channel(socket)));
  server.on("tlsClientError", () => undefined);
  return server;
}
