import { describe } from "vitest";
import { splitConductors } from "../../../shared/rules/split-conductors.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("the conductors of one feed", () => {
  conductorTable(splitConductors, [
    { title: "go together in a sound ring", lines: ring, gives: [] },
    {
      title: "are split where line goes straight and the rest by another point",
      lines: ["way-1.a socket-1.a L:L", "way-1.b socket-2.a", "socket-2.b socket-1.b N:N E:E"],
      gives: ["fix split socket-1.a~way-1.a"],
    },
    {
      title: "are split where the earth of a ring cable goes round another way",
      lines: [ring[0]!, "socket-1.b socket-2.a -E", ring[2]!, ring[3]!, "socket-1.c socket-3.c E:E"],
      gives: ["fix split socket-1.b~socket-2.a"],
    },
    {
      title: "may be in two entries of the same stations, for inside they are one terminal",
      lines: [ring[0]!, "socket-1.b socket-2.a L:L", "socket-1.c socket-2.c N:N E:E", ring[2]!, ring[3]!],
      gives: [],
    },
    {
      title: "are not split by one core that is open",
      lines: [ring[0]!, "socket-1.b socket-2.a -N", ring[2]!, ring[3]!],
      gives: [],
    },
  ]);
});
