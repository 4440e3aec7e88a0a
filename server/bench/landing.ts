import { type BoardLeads, noLeads } from "../../shared/board/board-leads.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { Timers } from "../clock/clock.ts";

/** Pins that have not made contact by then are not waited for: one of them may be broken. */
const longestMs = 100;

/**
 * Leads and whole cables that are plugged on the simulated board. They are sensed a moment after the answer, the pins of a
 * cable one after the other, and each would be a picture of its own on every screen: what there is to show waits for them.
 */
export class Landing {
  readonly #timers: Timers;
  readonly #over: () => void;
  #pins: BoardLeads = noLeads;
  #stopWaiting: (() => void) | undefined;

  /** `over` is called when the pins are not waited for any more though they are not in. */
  constructor(timers: Timers, over: () => void) {
    this.#timers = timers;
    this.#over = over;
  }

  /** True while pins are on their way. */
  get isUnderWay(): boolean {
    return this.#stopWaiting !== undefined;
  }

  /** Something is plugged, with these leads and codes. It is waited for with those before it, and no longer than they. */
  begin({ leads, codes }: BoardLeads): void {
    this.#pins = { leads: [...this.#pins.leads, ...leads], codes: [...this.#pins.codes, ...codes] };
    this.#stopWaiting ??= this.#timers.after(longestMs, () => this.end());
  }

  /** What is sensed is published afterwards, whether or not the pins are in. */
  sense({ groups, codes }: Pick<SensedState, "groups" | "codes">): void {
    const { leads, codes: wanted } = this.#pins;
    const areLeadsIn = leads.every((lead) =>
      groups.some((group) => lead.every((contact) => group.includes(contact))),
    );
    const areCodesIn = wanted.every(({ entry, code }) =>
      codes.some((one) => one.entry === entry && one.code === code),
    );
    if (areLeadsIn && areCodesIn) this.#forget();
  }

  end(): void {
    if (!this.isUnderWay) return;
    this.#forget();
    this.#over();
  }

  #forget(): void {
    this.#stopWaiting?.();
    this.#stopWaiting = undefined;
    this.#pins = noLeads;
  }
}
