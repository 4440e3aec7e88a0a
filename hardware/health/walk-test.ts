import type { ContactId } from "../../shared/board/ids.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";

export interface Touch {
  contact: ContactId;
  firstTime: boolean;
  leftCount: number;
}

/** A walk along the board with a probe: which contacts and test faces answered, and how many are left. */
export class WalkTest {
  readonly #left: Set<ContactId>;
  readonly #at = { red: null, black: null } as SensedState["probes"];

  constructor(contacts: Iterable<ContactId>) {
    this.#left = new Set(contacts);
  }

  /** The touches that are new in what is sensed now. */
  touches(probes: SensedState["probes"]): Touch[] {
    return (["red", "black"] as const).flatMap((probe) => {
      const contact = probes[probe];
      const isNew = contact !== this.#at[probe];
      this.#at[probe] = contact;
      if (!isNew || contact === null || contact === "other-probe") return [];
      const firstTime = this.#left.delete(contact);
      return [{ contact, firstTime, leftCount: this.#left.size }];
    });
  }
}
