import { describe } from "vitest";
import { short } from "../../../shared/rules/short.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

// BS 7671 643.3: line is insulated from neutral and earth everywhere; common practice, no source, for the cases.
describe("line that meets neutral or earth", () => {
  conductorTable(short, [
    { title: "is nowhere in a sound ring", lines: ring, gives: [] },
    {
      title: "is found where a lead joins line to neutral in the ring",
      lines: [...ring, "socket-1.c socket-2.c L:N"],
      gives: ["danger line-neutral socket-1.c.L~socket-2.c.N"],
    },
    {
      title: "is found where a lead joins line to earth in the ring",
      lines: [...ring, "socket-1.c socket-2.c L:E"],
      gives: ["danger line-earth socket-1.c.L~socket-2.c.E"],
    },
    {
      title: "is one finding for a cable crossed at one end, though two leads short",
      lines: [ring[0]!, "socket-1.b socket-2.a L:N N:L E:E", ring[2]!, ring[3]!],
      gives: ["danger line-neutral socket-1.b.L~socket-2.a.N"],
    },
    {
      title: "is not at the end of a spur, where crossed cores meet nothing else",
      lines: [...ring, "socket-1.c socket-4.a L:N N:L E:E"],
      gives: [],
    },
    {
      title:
        "is found over a bus between that is fed by neither: line to a dead neutral bus, and on to earth",
      lines: ["way-1.a socket-1.a L:L E:E", "socket-1.b socket-2.a L:N", "socket-2.b socket-1.c N:E"],
      gives: ["danger line-neutral socket-1.b.L~socket-2.a.N"],
    },
    {
      title: "is not where line is crossed to a bus that no neutral or earth feeds",
      lines: ["way-1.a socket-1.a L:L E:E", "socket-1.b socket-2.a L:N"],
      gives: [],
    },
    {
      title: "is found behind a fuse too",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "socket-4.b socket-4.c L:N"],
      gives: ["danger line-neutral socket-4.b.L~socket-4.c.N"],
    },
    {
      title: "is found where the neutral is that of another way: all neutrals meet at the bar",
      lines: ["way-1.a socket-1.a L:L", "way-2.a socket-1.b N:L"],
      gives: ["danger line-neutral socket-1.b.L~way-2.a.N"],
    },
  ]);
});
