import { io, type Socket } from "socket.io-client";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { followView } from "../../kiosk/link/follow-view.ts";
import { createServer, type NetworkDoor, type SpurwiseServer } from "../../server/create-server.ts";
import type { KeepingParts } from "../../server/keeping/desk-tasks.ts";
import type { Due } from "../../server/keeping/due.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { soon } from "./board/board-double.ts";
import { TestBench, type TestBenchOptions } from "./test-bench.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

export interface TestServer {
  bench: TestBench;
  server: SpurwiseServer;
  url: string;
  /** Through the door on the network, where there is one. */
  networkUrl: string;
}

/** A server of the real parts that listens on loopback, on a board in this process. */
export async function testServer(
  options: TestBenchOptions & {
    kioskFolder?: string;
    network?: NetworkDoor;
    backUpTo?: string;
    due?: Due[];
    keeping?: Partial<KeepingParts>;
  } = {},
): Promise<TestServer> {
  const bench = new TestBench(options);
  const server = createServer({
    bench: bench.parts,
    kioskFolder: options.kioskFolder ?? "/nonexistent",
    network: options.network,
    lines: "simulated",
    hasGpioLibrary: false,
    keepYears: 3,
    due: () => options.due ?? [],
    machine: {
      databasePath: join(bench.folder, "spurwise.db"),
      backUpTo: options.backUpTo,
      sqliteVersion: "3",
      notes: () => bench.notes.map((sentence) => ({ wallMs: 0, sentence })),
    },
    keeping: {
      keeper: { do: () => undefined, stopTask: () => undefined },
      path: join(bench.folder, "spurwise.db"),
      passphrase: undefined,
      update: undefined,
      startAgain: () => undefined,
      ...options.keeping,
    },
    logState: () => ({ state: "sound", eventCount: bench.parts.records?.logReader.eventCount() ?? 0 }),
  });
  bench.bench = server.bench;
  const { ownPort: port, networkPort } = await server.listen(0);
  onTestFinished(() => server.close());
  await soon();
  bench.atRest();
  return {
    bench,
    server,
    url: `http://127.0.0.1:${port}`,
    networkUrl: `${options.network?.tls ? "https" : "http"}://127.0.0.1:${networkPort}`,
  };
}

/** A screen at the far end of a real socket: it keeps every frame it is sent, byte for byte. */
export class Screen {
  readonly socket: Socket;
  readonly frames: string[] = [];
  view: BenchView | undefined;
  readonly #waiting: { until: (view: BenchView) => boolean; resolve: (view: BenchView) => void }[] = [];

  constructor(url: string, headers: Record<string, string> = {}) {
    this.socket = io(`${url}${benchNamespace}`, {
      transports: ["websocket"],
      reconnection: false,
      forceNew: true,
      extraHeaders: headers,
    });
    onTestFinished(() => void this.socket.disconnect());
    this.socket.io.on("open", () => {
      this.socket.io.engine.on("packet", (packet: { data?: unknown }) => {
        this.frames.push(typeof packet.data === "string" ? packet.data : JSON.stringify(packet.data ?? ""));
      });
    });
    followView<BenchView>(this.socket, (view) => {
      this.view = view;
      for (const waiter of this.#waiting.filter(({ until }) => until(view))) {
        this.#waiting.splice(this.#waiting.indexOf(waiter), 1);
        waiter.resolve(view);
      }
    });
  }

  /** The first view for which something holds, this one included. */
  sees(until: (view: BenchView) => boolean): Promise<BenchView> {
    if (this.view && until(this.view)) return Promise.resolve(this.view);
    return new Promise((resolve) => this.#waiting.push({ until, resolve }));
  }

  /** Sends anything under any name and gives what is answered. */
  send(name: string, message: unknown): Promise<Reply> {
    return new Promise((resolve) => this.socket.emit(name, message, resolve));
  }

  /** Sends a command that is expected to be done. */
  async does(name: string, message: unknown = {}): Promise<void> {
    const answer = await this.send(name, message);
    if (!answer.ok) throw new Error(`${name} was refused: ${answer.code}`);
  }
}
