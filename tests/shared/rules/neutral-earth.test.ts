import { describe } from "vitest";
import { neutralEarth } from "../../../shared/rules/neutral-earth.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a lead from neutral to earth", () => {
  conductorTable(neutralEarth, [
    { title: "is nowhere in a sound ring", lines: ring, gives: [] },
    {
      title: "is found between two socket outlets",
      lines: [...ring, "socket-1.c socket-2.c N:E"],
      gives: ["danger joined socket-1.c.N~socket-2.c.E"],
    },
    {
      title: "is found within one socket outlet",
      lines: [...ring, "socket-1.c socket-1.d E:N"],
      gives: ["danger joined socket-1.c.E~socket-1.d.N"],
    },
    {
      title: "is one finding for a cable whose neutral and earth are swapped",
      lines: [...ring, "socket-1.c socket-4.a L:L N:E E:N"],
      gives: ["danger joined socket-1.c.E~socket-4.a.N"],
    },
    {
      title: "is not a line on a neutral",
      lines: [...ring, "socket-1.c socket-4.a L:N"],
      gives: [],
    },
  ]);
});
