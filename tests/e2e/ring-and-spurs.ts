/** The model answer of the task with a ring of three socket outlets and two spurs: the entries that each cable joins. */
export const ringAndSpurs = [
  ["way-1.a", "socket-1.a"],
  ["socket-1.b", "socket-2.a"],
  ["socket-2.b", "socket-3.a"],
  ["socket-3.b", "way-1.b"],
  ["socket-1.c", "socket-5.a"],
  ["socket-2.c", "socket-6.a"],
] as const;

/** The points of that circuit, each of which the record asks for. */
export const pointsOfRing = ["socket-1", "socket-2", "socket-3", "socket-5", "socket-6"] as const;
