import { createServer, request, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/** What becomes of a batch on its way: everything a network does to it. */
export const mishaps = ["none", "lost", "answer-lost", "twice", "late", "half-open", "cut"] as const;
export type Mishap = (typeof mishaps)[number];

interface Answer {
  status: number;
  body: Buffer;
}

/** Stands between benches and their centre on loopback, and does to each batch what it is told next. */
export class FaultProxy {
  readonly #server: Server;
  readonly #target: () => number;
  readonly #plan: Mishap[] = [];
  /** Batches that come to the centre after the one behind them. */
  #late: Buffer[] = [];
  readonly #signature = new Map<Buffer, string>();

  constructor(target: () => number) {
    this.#target = target;
    this.#server = createServer(
      (asked, answer) => void this.#pass(asked, answer).catch(() => answer.destroy()),
    );
  }

  async listen(): Promise<string> {
    await new Promise<void>((ready) => this.#server.listen(0, "127.0.0.1", ready));
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }

  /** What happens to the next batches, one after the other; nothing after them. */
  plan(...next: Mishap[]): void {
    this.#plan.push(...next);
  }

  /** How often each thing has happened to a batch. */
  readonly happened = new Map<Mishap, number>();

  get isPlanOver(): boolean {
    return this.#plan.length === 0;
  }

  heal(): void {
    this.#plan.length = 0;
  }

  close(): void {
    this.#server.closeAllConnections();
    this.#server.close();
  }

  async #pass(asked: IncomingMessage, answer: ServerResponse): Promise<void> {
    const pieces: Buffer[] = [];
    for await (const piece of asked) pieces.push(piece as Buffer);
    const body = Buffer.concat(pieces);
    this.#signature.set(body, String(asked.headers["spurwise-signature"]));
    const mishap = this.#plan.shift() ?? "none";
    this.happened.set(mishap, (this.happened.get(mishap) ?? 0) + 1);
    switch (mishap) {
      case "lost":
        return void answer.destroy();
      case "half-open":
        // Nobody answers; whoever waits gives up.
        return;
      case "late":
        this.#late.push(body);
        return void answer.destroy();
      case "answer-lost":
        await this.#forward(body);
        return void answer.destroy();
      case "twice":
        await this.#forward(body);
        break;
      case "cut":
        await this.#forward(body.subarray(0, body.length / 2), this.#signature.get(body));
        return void answer.destroy();
      case "none":
        break;
    }
    const { status, body: told } = await this.#forward(body);
    const late = this.#late;
    this.#late = [];
    for (const one of late) await this.#forward(one);
    answer.writeHead(status, { "content-type": "application/json" }).end(told);
  }

  #forward(body: Buffer, signature = this.#signature.get(body)): Promise<Answer> {
    return new Promise((done, failed) => {
      const passed = request(
        {
          port: this.#target(),
          host: "127.0.0.1",
          path: "/centre/rows",
          method: "POST",
          headers: { "content-type": "application/json", "spurwise-signature": signature ?? "" },
        },
        (response) => {
          const pieces: Buffer[] = [];
          response.on("data", (piece: Buffer) => pieces.push(piece));
          response.on("end", () => done({ status: response.statusCode ?? 500, body: Buffer.concat(pieces) }));
          response.on("error", failed);
        },
      );
      passed.on("error", failed);
      passed.end(body);
    });
  }
}
