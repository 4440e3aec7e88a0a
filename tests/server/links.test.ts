import { EventEmitter } from "node:events";
import type { IncomingMessage } from "node:http";
import { io, type Socket } from "socket.io-client";
import { describe, expect, it, onTestFinished } from "vitest";
import { LinkGuard, linkLimits, type RawLink } from "../../server/web/link-guard.ts";
import { RateByAddress } from "../../server/web/rate-by-address.ts";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { ManualClock } from "./manual-clock.ts";
import { Screen, testServer } from "./test-server.ts";

/** A link that is opened; undefined where it is not let in. */
async function open(url: string): Promise<Socket | undefined> {
  const socket = io(`${url}${benchNamespace}`, {
    transports: ["websocket"],
    reconnection: false,
    forceNew: true,
  });
  onTestFinished(() => void socket.disconnect());
  const isIn = await new Promise((resolve) => {
    socket.once("view", () => resolve(true));
    socket.once("connect_error", () => resolve(false));
  });
  return isIn ? socket : undefined;
}

describe("the links of a door", () => {
  it("are so many from one address and no more; where one ends there is room for another", async () => {
    const { url, bench } = await testServer();
    const links: Socket[] = [];
    for (let link = await open(url); link; link = await open(url)) links.push(link);
    expect(links).toHaveLength(linkLimits.linksOfAddress);
    links[0]?.disconnect();
    bench.clock.advance(1000);
    let again = await open(url);
    while (!again) again = await open(url);
    expect(await open(url)).toBeUndefined();
  });

  it("together take no more acts than one address may send", async () => {
    const { url } = await testServer();
    const screens = Array.from({ length: 4 }, () => new Screen(url));
    for (const screen of screens) await screen.sees(() => true);
    const answers = await Promise.all(
      screens.flatMap((screen) =>
        Array.from({ length: 50 }, () => screen.send("set-large", { isLarge: true })),
      ),
    );
    const refused = answers.filter((answer) => !answer.ok);
    expect(refused).toHaveLength(200 - 120);
    expect(refused.every((answer) => !answer.ok && answer.code === "too-fast")).toBe(true);
  });

  it("get no answer that is as long as what they sent", async () => {
    const { url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(() => true);
    const long = "x".repeat(60_000);
    for (const [name, message] of [
      [long, {}],
      ["sign-in", { by: "guest", [long]: 1 }],
      ["sign-in", { by: long }],
    ] as const) {
      const answer = await screen.send(name, message);
      expect(answer).toMatchObject({ code: "bad-message" });
      expect(JSON.stringify(answer).length).toBeLessThan(1000);
    }
  });

  it("join once: who asks for the whole view again and again is dropped", async () => {
    const { url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(() => true);
    const ended = new Promise((resolve) => screen.socket.io.once("close", resolve));
    screen.socket.disconnect().connect();
    await ended;
  });

  it("that send without end are dropped, and the bench goes on", async () => {
    const { bench, url } = await testServer();
    const screen = new Screen(url);
    await screen.sees(() => true);
    const ended = new Promise((resolve) => screen.socket.once("disconnect", resolve));
    for (let count = 0; count < 400; count += 1) screen.socket.emit("set-large", { isLarge: true });
    await ended;
    expect(bench.notes).toEqual([
      expect.stringMatching(/a link from \S*127.0.0.1 was dropped: it sends without end/) as string,
    ]);
    await new Screen(url).sees(() => true);
  });
});

/** A connection that takes what it is given and reads none of it. */
class StuckConnection extends EventEmitter {
  readonly remoteAddress: string;
  writableLength = 0;
  isDestroyed = false;
  constructor(remoteAddress: string) {
    super();
    this.remoteAddress = remoteAddress;
  }
  destroy(): void {
    this.isDestroyed = true;
    this.emit("close");
  }
}

const linkOf = (connection: StuckConnection): RawLink & EventEmitter =>
  Object.assign(new EventEmitter(), { request: { socket: connection } as unknown as IncomingMessage });

describe("a link that does not read", () => {
  const kiB = 1024;
  function watched() {
    const dropped: string[] = [];
    const guard = new LinkGuard(new ManualClock(), (fault, address) => dropped.push(`${fault} ${address}`));
    const connection = new StuckConnection("10.0.0.7");
    const link = linkOf(connection);
    expect(guard.admits(link.request)).toBe(true);
    guard.watch(link);
    return { dropped, connection, link };
  }
  const packet = { data: "x".repeat(100 * kiB) };

  it("is dropped once more than half a megabyte waits for it, in the program or in the connection", () => {
    const { dropped, connection, link } = watched();
    for (let count = 0; count < 5; count += 1) link.emit("packetCreate", packet);
    expect(dropped).toEqual([]);
    link.emit("packetCreate", packet);
    expect(dropped).toEqual(["backlog 10.0.0.7"]);
    expect(connection.isDestroyed).toBe(true);

    const other = watched();
    other.connection.writableLength = 450 * kiB;
    other.link.emit("packetCreate", packet);
    expect(other.dropped).toEqual(["backlog 10.0.0.7"]);
  });

  it("is none where it reads in between: what was handed on waits no more", () => {
    const { dropped, link } = watched();
    for (let count = 0; count < 50; count += 1) {
      link.emit("packetCreate", packet);
      link.emit("flush", {});
    }
    expect(dropped).toEqual([]);
  });
});

describe("rates by address", () => {
  it("are each address's own, and no more than two thousand are kept in mind", () => {
    const rates = new RateByAddress(1, 1, () => 0);
    expect([rates.take("a"), rates.take("a"), rates.take("b")]).toEqual([true, false, true]);
    for (let count = 0; count < 1999; count += 1) rates.take(`10.0.${count >> 8}.${count & 255}`);
    expect([rates.take("b"), rates.take("a")]).toEqual([false, true]);
  });
});
