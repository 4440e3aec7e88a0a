import { getContext, setContext } from "svelte";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import type { DeskLive } from "../../shared/protocol/desk-view.ts";
import type { KeeperView } from "../../shared/protocol/keep-view.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { NoReply, Send } from "../link/send.ts";
import { fetchData } from "./fetch-data.ts";
import { fetchKeep } from "./fetch-keep.ts";
import type { DeskWords } from "./desk-words.svelte.ts";

/** What has changed at the bench is looked at again after this long, however often it changes. */
const lookAgainMs = 500;

/** What the desk knows: what goes on at the bench, who sits here, and what was last refused. */
export class Desk {
  live = $state.raw<DeskLive | null>(null);
  /** Who sits here. */
  me = $state.raw<KeeperView | null>(null);
  view = $state.raw<BenchView | null>(null);
  /** Why there is nothing to see: nobody is signed in, or it is not for them. */
  shut = $state.raw<"sign-in" | "not-for-you" | null>(null);
  refusal = $state.raw<Refusal | NoReply | null>(null);
  isLost = $state(false);
  /** Counts the changes: pages look again with each. */
  change = $state(0);
  readonly #words: DeskWords;
  #send: Send | undefined;
  #isDue = false;

  constructor(words: DeskWords) {
    this.#words = words;
  }

  sendBy(send: Send): void {
    this.#send = send;
  }

  /** The bench has something new to show. */
  changed(view: BenchView): void {
    this.view = view;
    this.isLost = false;
    if (this.#isDue) return;
    this.#isDue = true;
    window.setTimeout(() => {
      this.#isDue = false;
      void this.look();
    }, lookAgainMs);
  }

  async look(): Promise<void> {
    const [me, live] = await Promise.all([
      fetchKeep<KeeperView>("/me"),
      fetchData<DeskLive>(`/live?language=${this.#words.language}`),
    ]);
    this.me = me.ok ? me.data : null;
    this.live = live.ok ? live.data : null;
    this.shut = live.ok ? null : live.status === 403 ? "not-for-you" : "sign-in";
    this.change += 1;
  }

  /** Asks the bench to do something; true when it did. */
  async act<Name extends ActName>(name: Name, message: ActMessage<Name>): Promise<boolean> {
    const answer = (await this.#send?.(name, message)) ?? { ok: false, code: "link", facts: {} };
    this.refusal = answer.ok ? null : answer;
    if (answer.ok) await this.look();
    return answer.ok;
  }
}

const desk = Symbol("desk");
export const provideDesk = (made: Desk): Desk => setContext(desk, made);
export const useDesk = (): Desk => getContext<Desk>(desk);
