import type { ContactId } from "../board/ids.ts";
import type { ConductorModel } from "./conductor-model.ts";

/** Which conductors land on each contact. Almost every contact has one or none: only a crowded one takes a list. */
export class ContactConductors {
  readonly #first: (ConductorModel | undefined)[];
  readonly #crowded = new Map<number, { contact: ContactId; conductors: ConductorModel[] }>();

  constructor(contactCount: number) {
    this.#first = new Array<ConductorModel | undefined>(contactCount).fill(undefined);
  }

  /** Notes a conductor at both its ends. */
  add(conductor: ConductorModel): void {
    this.#note(conductor.fromContactIndex, conductor.from, conductor);
    this.#note(conductor.toContactIndex, conductor.to, conductor);
  }

  #note(index: number, contact: ContactId, conductor: ConductorModel): void {
    const first = this.#first[index];
    if (!first) {
      this.#first[index] = conductor;
      return;
    }
    const known = this.#crowded.get(index);
    if (known) known.conductors.push(conductor);
    else this.#crowded.set(index, { contact, conductors: [first, conductor] });
  }

  /** The conductors at a contact, by its number, in the order in which they were added. */
  at(index: number): readonly ConductorModel[] {
    const first = this.#first[index];
    return this.#crowded.get(index)?.conductors ?? (first ? [first] : []);
  }

  /** The contacts on which several conductors land. */
  get crowded(): ContactId[] {
    return [...this.#crowded.values()].map(({ contact }) => contact);
  }
}
