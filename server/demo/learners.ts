import type { NewLearner } from "../store/learners.ts";

/**
 * The class list of an invented workshop, so that a new bench can be tried. Nobody in it is real. A centre
 * puts its own list in its place.
 */
export const demoLearners: readonly NewLearner[] = [
  { id: "demo-01", name: "Aleks Brandt", centreNumber: "T-001", badge: "SPURWISE-DEMO-01" },
  { id: "demo-02", name: "Bryony Cole", centreNumber: "T-002", badge: "SPURWISE-DEMO-02" },
  { id: "demo-03", name: "Callum Reid", centreNumber: "T-003", badge: "SPURWISE-DEMO-03" },
  { id: "demo-04", name: "Dilnoza Karim", centreNumber: "T-004", badge: "SPURWISE-DEMO-04" },
  { id: "demo-05", name: "Ewan Hartley", centreNumber: "T-005", badge: "SPURWISE-DEMO-05" },
  { id: "demo-06", name: "Farah Lund", centreNumber: "T-006", badge: "SPURWISE-DEMO-06" },
  { id: "demo-07", name: "Grzegorz Nowicki", centreNumber: "T-007", badge: "SPURWISE-DEMO-07" },
  { id: "demo-08", name: "Hattie Moss", centreNumber: "T-008", badge: "SPURWISE-DEMO-08" },
  { id: "demo-09", name: "Idris Vale", centreNumber: "T-009", badge: "SPURWISE-DEMO-09" },
  { id: "demo-10", name: "Jonah Peake", centreNumber: "T-010", badge: "SPURWISE-DEMO-10" },
  { id: "demo-11", name: "Kasia Wrona", centreNumber: "T-011", badge: "SPURWISE-DEMO-11" },
  { id: "demo-12", name: "Leo Ashdown", centreNumber: "T-012", badge: "SPURWISE-DEMO-12" },
];
