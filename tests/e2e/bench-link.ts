import { io, type Socket } from "socket.io-client";
import { followView } from "../../kiosk/link/follow-view.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

/** Nothing that a bench does takes as long, on a busy machine either: what is not there by then never comes. */
const longestMs = 45_000;

/** What comes to the same when it is done twice. */
const repeatable = new Set<ActName>(["set-language", "set-large", "plug", "plug-cable", "pull", "probe"]);

/** The link dropped, as it does where this process stood still for seconds; it is opened anew by itself. */
const isDropped = (error: unknown): boolean =>
  error instanceof Error && error.message.includes("socket has been disconnected");

/** A second screen at the same bench, without a page: brings about quickly what a check is not about. */
export class BenchLink {
  readonly #socket: Socket;
  #view: BenchView | undefined;
  readonly #looking = new Set<(view: BenchView) => void>();

  constructor(address: string) {
    this.#socket = io(`${address}${benchNamespace}`, { transports: ["websocket"], forceNew: true });
    followView<BenchView>(this.#socket, (view) => {
      this.#view = view;
      for (const look of [...this.#looking]) look(view);
    });
  }

  /** The view that came last; undefined before the first. */
  get view(): BenchView | undefined {
    return this.#view;
  }

  /**
   * Does something at the bench, again where the link dropped and it may be done twice.
   *
   * @throws where the bench refuses it.
   */
  async does<Name extends ActName>(name: Name, command: ActMessage<Name>): Promise<void> {
    const ask = () => this.#socket.timeout(longestMs).emitWithAck(name, command) as Promise<Reply>;
    const answer = await ask().catch((error: unknown) => {
      if (isDropped(error) && repeatable.has(name)) return ask();
      throw error;
    });
    if (!answer.ok) throw new Error(`${name} was refused: ${answer.code} ${JSON.stringify(answer.facts)}`);
  }

  /** Plugs cables of one size, one after the other. @throws where the bench refuses one. */
  async plugCables(cables: readonly (readonly [string, string])[], csaMm2: number): Promise<void> {
    for (const [entryA, entryB] of cables)
      await this.does("plug-cable", { entryA, entryB, csaMm2 } as ActMessage<"plug-cable">);
  }

  /** Leaves what is open, clears the board and locks the bench, in English and usual letters. */
  async reset(): Promise<void> {
    await this.seen((view) => view.state === "ready");
    if (this.#view?.attempt) await this.does("leave-attempt", {});
    await this.does("sign-in", { by: "guest" });
    const fits = (await this.seen(({ scenarios }) => scenarios.length > 0)).scenarios.find(
      ({ lacks }) => lacks.length === 0,
    );
    await this.does("start-attempt", { scenario: fits?.id ?? "", mode: "practice" });
    await this.does("accept-caution", {});
    await this.does("pull", { what: "all" });
    await this.seen(({ attempt }) => attempt?.cables.length === 0);
    await this.does("leave-attempt", {});
    await this.does("sign-out", {});
    await this.does("set-language", { language: "en" });
    await this.does("set-large", { isLarge: false });
  }

  /**
   * The first view for which something holds, the last one included.
   *
   * @throws where none comes, with what was seen last.
   */
  seen(until: (view: BenchView) => boolean): Promise<BenchView> {
    if (this.#view && until(this.#view)) return Promise.resolve(this.#view);
    return new Promise((resolve, reject) => {
      const never = setTimeout(() => {
        this.#looking.delete(look);
        reject(
          new Error(`never seen: ${String(until)}; last seen: ${JSON.stringify(this.#view).slice(0, 4000)}`),
        );
      }, longestMs);
      const look = (view: BenchView): void => {
        if (!until(view)) return;
        clearTimeout(never);
        this.#looking.delete(look);
        resolve(view);
      };
      this.#looking.add(look);
    });
  }

  close(): void {
    this.#socket.disconnect();
  }
}
