import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { Reply } from "../../shared/protocol/reply.ts";
import type { Timers } from "../clock/clock.ts";
import { refuse } from "../refusal.ts";
import type { FromBench, FromLead, OrderAct } from "./lead-messages.schema.ts";
import type { OrderBy } from "./order-by.ts";

const orderTimeoutMs = 8000;

/** What benches were told to do, until they answer or it is too late, and what each refused last. */
export class BenchOrders {
  readonly #timers: Timers;
  readonly #changed: () => void;
  readonly #replies = new Map<number, (reply: Reply) => void>();
  readonly #refused = new Map<string, string>();
  #orderCount = 0;

  constructor(timers: Timers, changed: () => void) {
    this.#timers = timers;
    this.#changed = changed;
  }

  refusedBy(benchId: string): string | undefined {
    return this.#refused.get(benchId);
  }

  /** Says it to the bench by `send`; done when the bench has answered, refused where it does not in time. */
  give<Act extends OrderAct>(
    benchId: string,
    { act, message, by }: { act: Act; message: ActMessage<Act>; by: OrderBy },
    send: (message: FromLead) => void,
  ): Promise<Reply> {
    const order = (this.#orderCount += 1);
    return new Promise<Reply>((resolve) => {
      const cancel = this.#timers.after(orderTimeoutMs, () => answer(refuse("bench-not-linked")));
      const answer = (reply: Reply): void => {
        cancel();
        this.#replies.delete(order);
        if (reply.ok) this.#refused.delete(benchId);
        else this.#refused.set(benchId, reply.code);
        this.#changed();
        resolve(reply);
      };
      this.#replies.set(order, answer);
      send({ what: "order", order, act, message, by });
    });
  }

  /** Takes what a bench answers; one that is too late, or to nothing, is let go by. */
  take({ order, isDone, code }: Extract<FromBench, { what: "reply" }>): void {
    this.#replies.get(order)?.(
      isDone ? { ok: true } : { ok: false, code: (code ?? "server-error") as never, facts: {} },
    );
  }
}
