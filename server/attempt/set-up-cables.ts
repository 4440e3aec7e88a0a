import type { CableId } from "../../shared/board/ids.ts";
import type { AttemptState } from "./attempt-state.ts";

/** True once the circuit is worked on: what goes in and out before is the board being made as it was found. */
const isWorkedOn = ({ entered }: Pick<AttemptState, "entered">): boolean =>
  entered.includes("wire") || entered.includes("test");

/**
 * Knows which cables of a circuit are set up: in at least once since the work on it began. Only such a cable can be taken
 * out and put in again as another; one that is still to be put in as it was found keeps what is hidden in it.
 */
export class SetUpCables {
  readonly #setUp = new Set<CableId>();

  /**
   * Those of some cables that are set up, with `cables` in now. Work that is taken up again is asked first with the
   * cables that were in when it stopped: a power cut may come while leads are still to be put in.
   */
  among(
    some: readonly CableId[],
    state: Pick<AttemptState, "entered">,
    cables: readonly { id: CableId }[],
  ): CableId[] {
    if (isWorkedOn(state)) for (const { id } of cables) this.#setUp.add(id);
    return some.filter((cable) => this.#setUp.has(cable));
  }
}
