import type { StaffRole } from "../../shared/protocol/author.ts";
import type { Person, PersonRole } from "../people/person.ts";

/** An invented person; their badge stands in this file for everybody to read. */
export type DemoPerson = Person & { badge: string };

const learner = (number: string, name: string): DemoPerson => ({
  id: `demo-${number}`,
  name,
  role: "learner" satisfies PersonRole,
  badge: `SPURWISE-DEMO-${number}`,
});

const staff = (role: StaffRole, name: string): DemoPerson => ({
  id: `demo-${role}`,
  name,
  role,
  badge: `SPURWISE-DEMO-${role.toUpperCase()}`,
});

/**
 * The people of an invented workshop, so that a simulated board can be tried before anybody is set up. Nobody of them
 * is real, and none is there on a bench with a real board or once its first person is set up.
 */
export const demoPeople: readonly DemoPerson[] = [
  learner("01", "Aleks Brandt"),
  learner("02", "Bryony Cole"),
  learner("03", "Callum Reid"),
  learner("04", "Dilnoza Karim"),
  learner("05", "Ewan Hartley"),
  learner("06", "Farah Lund"),
  learner("07", "Grzegorz Nowicki"),
  learner("08", "Hattie Moss"),
  learner("09", "Idris Vale"),
  learner("10", "Jonah Peake"),
  learner("11", "Kasia Wrona"),
  learner("12", "Leo Ashdown"),
  staff("trainer", "Maud Perrin"),
  staff("assessor", "Olwen Tansley"),
  staff("verifier", "Piotr Lasek"),
  staff("technician", "Ruth Okafor"),
];
