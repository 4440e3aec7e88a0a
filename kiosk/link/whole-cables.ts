import { byId, type CableId, cableId, type EntryId, roleClass } from "../../shared/board/ids.ts";
import type { AttemptView, BenchView, BoardFace, SensedCable } from "../../shared/protocol/bench-view.ts";
import { contactsOf } from "../wiring/contacts-of.ts";

/** Pins of a plug that are still missing so long after the first are not waited for. */
const longestMs = 45;

/** The cores that run straight from one end of a cable to the other. */
const straightCores = ({ from, to }: SensedCable, face: BoardFace): SensedCable["conductors"] => {
  const far = contactsOf(to, face);
  return contactsOf(from, face)
    .flatMap(({ id, core, role }) => {
      const match = far.find((contact) => contact.core === core);
      return match ? [{ from: id, to: match.id, class: roleClass(role) }] : [];
    })
    .toSorted((a, b) => byId(a.from, b.from));
};

/** The work with a cable whole of which a pin is in; undefined where all of its pins are. */
const whole = ({ attempt, board }: BenchView, cable: SensedCable): AttemptView | undefined => {
  if (!attempt || !board) return undefined;
  const conductors = straightCores(cable, board);
  if (cable.conductors.length >= conductors.length) return undefined;
  // With its size its first pin may be on the disk already.
  const all: SensedCable = { ...cable, conductors, isUnsaved: true };
  const cables = attempt.cables.map((one) => (one === cable ? all : one));
  return { ...attempt, cables };
};

interface Eyes {
  show: (view: BenchView) => void;
  /** The work as it will be in a moment, as far as can be told. */
  foresee: (attempt: AttemptView) => void;
}

/**
 * Shows each view as it comes, and a cable that is plugged here once it is in: its pins make contact one after the
 * other, and each would be drawn anew.
 */
export class WholeCables {
  readonly #eyes: Eyes;
  #expected: CableId | undefined;
  #held: BenchView | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(eyes: Eyes) {
    this.#eyes = eyes;
  }

  /** A cable is plugged from here. */
  expect({ entryA, entryB }: { entryA: EntryId; entryB: EntryId }): void {
    this.release();
    this.#expected = cableId(entryA, entryB);
  }

  hear(view: BenchView): void {
    this.#held = view;
    const cable = view.attempt?.cables.find(({ id }) => id === this.#expected);
    const foreseen = cable && whole(view, cable);
    if (foreseen === undefined) {
      if (cable) this.#expected = undefined;
      this.#show();
    } else if (this.#timer === undefined) {
      this.#timer = setTimeout(() => this.release(), longestMs);
      this.#eyes.foresee(foreseen);
    }
  }

  /** Shows what is held, and waits for nothing more. */
  release(): void {
    this.#expected = undefined;
    this.#show();
  }

  #show(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const held = this.#held;
    this.#held = undefined;
    if (held) this.#eyes.show(held);
  }
}
