import type { Person, PersonRole, Told } from "./person.ts";

/** A person as they are on a bench's list, with the hash of their row as the log has it. */
export interface ListedPerson {
  id: string;
  role: PersonRole;
  told: Told;
  rowHash: string;
}

/** Somebody whom another bench knows. */
export type OtherPerson = Person & { told: Told };

/** People whom other benches know, for their names alone: nobody of them signs in here. */
export interface OtherPeople {
  all: () => readonly OtherPerson[];
  byId: (id: string) => OtherPerson | undefined;
}
