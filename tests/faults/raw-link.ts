import { randomBytes } from "node:crypto";
import { connect, type Socket } from "node:net";

const textOpcode = 0x81;
const maskBit = 0x80;

/** A text as one frame of RFC 6455, section 5.2, masked by zeros: what is masked so stays as it was. */
function frameOf(text: string): Buffer {
  const body = Buffer.from(text, "utf8");
  const isLong = body.length > 125;
  const head = Buffer.alloc(isLong ? 4 : 2);
  head[0] = textOpcode;
  head[1] = maskBit | (isLong ? 126 : body.length);
  if (isLong) head.writeUInt16BE(body.length, 2);
  return Buffer.concat([head, Buffer.alloc(4), body]);
}

/** The far end of a link that writes what it likes and never reads, but for the answer that lets it in. */
export class RawLink {
  readonly #socket: Socket;
  isEnded = false;

  private constructor(socket: Socket) {
    this.#socket = socket;
    socket.on("close", () => (this.isEnded = true));
    socket.on("error", () => (this.isEnded = true));
  }

  /** Asks a server for a link; undefined where it lets none in. */
  static async open(address: string): Promise<RawLink | undefined> {
    const { hostname, port, host } = new URL(address);
    const socket = connect(Number(port), hostname);
    const link = new RawLink(socket);
    socket.write(
      [
        "GET /socket.io/?EIO=4&transport=websocket HTTP/1.1",
        `Host: ${host}`,
        "Connection: Upgrade",
        "Upgrade: websocket",
        "Sec-WebSocket-Version: 13",
        `Sec-WebSocket-Key: ${randomBytes(16).toString("base64")}`,
        "\r\n",
      ].join("\r\n"),
    );
    const answer = await new Promise<string>((resolve) => {
      socket.once("data", (chunk: Buffer) => resolve(chunk.toString("latin1")));
      socket.once("close", () => resolve(""));
    });
    socket.pause();
    if (answer.startsWith("HTTP/1.1 101")) return link;
    link.end();
    return undefined;
  }

  /** Sends a packet as it stands: `40/bench,` joins, `42/bench,[...]` is an act, `3` says that it is alive. */
  send(packet: string): void {
    if (!this.isEnded) this.#socket.write(frameOf(packet));
  }

  end(): void {
    this.#socket.destroy();
  }
}
