/** Twelve cables on the workshop board, some to stations that the plan of `build-a-radial` has no place for. */
export const twelveCables = [
  ["way-2.a", "socket-1.a"],
  ["socket-1.b", "socket-2.a"],
  ["socket-2.b", "socket-3.a"],
  ["socket-3.b", "socket-4.a"],
  ["socket-4.b", "socket-5.a"],
  ["socket-5.b", "socket-6.a"],
  ["way-1.a", "socket-1.c"],
  ["socket-1.d", "socket-2.c"],
  ["way-1.b", "socket-3.c"],
  ["way-3.a", "socket-4.c"],
  ["socket-2.d", "socket-6.b"],
  ["way-3.b", "socket-6.c"],
] as const;
