import { type CableId, endsOfCable, entryOf } from "../../shared/board/ids.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import type { Timers } from "../clock/clock.ts";
import type { Declared } from "./attempt-state.ts";

/** A declared size ends when its cable has been out for this long. */
const sizeEndsMs = 2000;

/** True where a bad line may hide the cable: it cannot be said to be out. */
function isDoubtful(cable: CableId, { unknown }: Plugged): boolean {
  const ends: string[] = endsOfCable(cable);
  return unknown.some((contact) => ends.includes(entryOf(contact)));
}

/** Watches cables that are out, and says of which the declared size has ended. */
export class SizeWatch {
  readonly #timers: Timers;
  readonly #ended: (cable: CableId) => void;
  readonly #waiting = new Map<CableId, () => void>();

  constructor(timers: Timers, ended: (cable: CableId) => void) {
    this.#timers = timers;
    this.#ended = ended;
  }

  /** Waits for the cables with a declared size that are out now, and no longer for those that are back. */
  watch(declared: Iterable<Declared>, cables: readonly { id: CableId }[], plugged: Plugged): void {
    const isIn = new Set(cables.map(({ id }) => id));
    const out = new Set(
      [...declared]
        .filter(({ key }) => key === "csaMm2")
        .map(({ subject }) => subject as CableId)
        .filter((cable) => !isIn.has(cable) && !isDoubtful(cable, plugged)),
    );
    for (const [cable, cancel] of this.#waiting)
      if (!out.has(cable)) {
        cancel();
        this.#waiting.delete(cable);
      }
    for (const cable of out)
      if (!this.#waiting.has(cable))
        this.#waiting.set(
          cable,
          this.#timers.after(sizeEndsMs, () => {
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
