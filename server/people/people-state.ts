import type { DemoPerson } from "../demo/people.ts";
import { newFirstStartCode } from "./first-start-code.ts";
import type { GuessGuard } from "./guess-guard.ts";
import type { OtherPeople } from "./other-people.ts";
import type { PersonReader } from "./person-reader.ts";
import type { PersonWriter } from "./person-writer.ts";
import type { PinHasher } from "./pin-hash.ts";
import type { BadgeMarks } from "./secrets.ts";

export interface PeopleParts {
  /** Undefined beside a log that is damaged: then nobody is known and nobody can be set up. */
  store: { reader: PersonReader; writer: PersonWriter; marks: BadgeMarks } | undefined;
  /** Invented people, on a board that is simulated; they are gone once somebody is set up. */
  demo: readonly DemoPerson[];
  pins: PinHasher;
  guard: GuessGuard;
  /** Those whom the benches of a centre know, at the centre's desk. */
  others?: OtherPeople | undefined;
}

/** What the parts of `People` have in common: where people are kept, and whether anybody is set up. */
export class PeopleState {
  readonly store: PeopleParts["store"];
  readonly pins: PinHasher;
  readonly #demo: readonly DemoPerson[];
  #isSetUp: boolean;
  #revision = 0;
  /** The code with which the first person is set up; undefined once there is one, and where nobody can be. */
  code: string | undefined;

  /** @throws StoreError where the list cannot be read. */
  constructor({ store, pins, demo }: PeopleParts) {
    this.store = store;
    this.pins = pins;
    this.#demo = demo;
    this.#isSetUp = store?.reader.hasStaff() ?? false;
    if (store && !this.#isSetUp) this.code = newFirstStartCode();
  }

  get isSetUp(): boolean {
    return this.#isSetUp;
  }

  /** Another whenever the list is another. */
  get revision(): number {
    return this.#revision;
  }

  /** The invented people; they are gone once somebody is set up. */
  get demo(): readonly DemoPerson[] {
    return this.#isSetUp ? [] : this.#demo;
  }

  demoOfBadge(badge: string): DemoPerson | undefined {
    return this.demo.find((person) => person.badge === badge);
  }

  /** The list is another now; `hasStaff`: somebody of the staff is on it. */
  changed(hasStaff = false): void {
    this.#isSetUp ||= hasStaff;
    if (this.#isSetUp) this.code = undefined;
    this.#revision += 1;
  }
}
