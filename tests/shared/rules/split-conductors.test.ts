import { describe } from "vitest";
import { splitConductors } from "../../../shared/rules/split-conductors.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

/** A socket outlet behind a connection unit on a ring. */
const fused = (words: string): string[] => [
  ...ring,
  "socket-1.c fcu-1.a",
  `fcu-1.c socket-4.a ${words}`.trim(),
];

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
      title: "are split where line goes through a connection unit and neutral past it",
      lines: [...fused("-N"), "socket-2.c socket-4.b N:N"],
      gives: ["fix split socket-2.c~socket-4.b"],
    },
    {
      title: "are split where neutral goes both through a connection unit and past it",
      lines: [...fused(""), "socket-2.c socket-4.b N:N"],
      gives: ["fix split socket-2.c~socket-4.b"],
    },
    {
      title: "are split where neutral comes from behind another connection unit",
      lines: [...fused("-N"), "socket-3.c fcu-2.a", "fcu-2.c socket-5.a", "socket-5.b socket-4.b N:N"],
      gives: ["fix split socket-4.b~socket-5.b"],
    },
    {
      title: "are split where earth goes past a connection unit instead of with the line",
      lines: [...fused("-E"), "socket-2.c socket-4.b E:E"],
      gives: ["fix split socket-2.c~socket-4.b"],
    },
    {
      title: "are not split by one more earth past a connection unit",
      lines: [...fused(""), "socket-2.c socket-4.b E:E"],
      gives: [],
    },
    {
      title: "are not split where the neutral comes from another way, which is another rule",
      lines: [...fused("-N"), "way-2.a socket-4.b N:N"],
      gives: [],
    },
    {
      title: "are not split by one core that is open",
      lines: [ring[0]!, "socket-1.b socket-2.a -N", ring[2]!, ring[3]!],
      gives: [],
    },
  ]);
});
