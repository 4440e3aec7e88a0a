import { type CableId, endsOfCable, entryOf } from "../../shared/board/ids.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import type { Timers } from "../clock/clock.ts";

/** A cable that has been out for this long is another: its declared size ends, and so does what is hidden in it. */
const isOtherAfterMs = 2000;

/** True where a bad line may hide the cable: it cannot be said to be out. */
function isDoubtful(cable: CableId, { unknown }: Plugged): boolean {
  const ends: string[] = endsOfCable(cable);
  return unknown.some((contact) => ends.includes(entryOf(contact)));
}

/** Watches cables that are out, and says which have been out long enough to be others. */
export class CableWatch {
  readonly #timers: Timers;
  readonly #ended: (cable: CableId) => void;
  readonly #waiting = new Map<CableId, () => void>();

  constructor(timers: Timers, ended: (cable: CableId) => void) {
    this.#timers = timers;
    this.#ended = ended;
  }

  /** Waits for those of `watched` that are out now, and no longer for those that are back. */
  watch(watched: readonly CableId[], cables: readonly { id: CableId }[], plugged: Plugged): void {
    const isIn = new Set(cables.map(({ id }) => id));
    const out = new Set(watched.filter((cable) => !isIn.has(cable) && !isDoubtful(cable, plugged)));
    for (const [cable, cancel] of this.#waiting)
      if (!out.has(cable)) {
        cancel();
        this.#waiting.delete(cable);
      }
    for (const cable of out)
      if (!this.#waiting.has(cable))
        this.#waiting.set(
          cable,
          this.#timers.after(isOtherAfterMs, () => {
            this.#waiting.delete(cable);
            this.#ended(cable);
          }),
        );
  }

  stop(): void {
    for (const cancel of this.#waiting.values()) cancel();
    this.#waiting.clear();
  }
}
