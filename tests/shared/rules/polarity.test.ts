import { describe } from "vitest";
import { polarity } from "../../../shared/rules/polarity.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a conductor", () => {
  conductorTable(polarity, [
    { title: "lands on its own role in a sound ring", lines: ring, gives: [] },
    {
      title: "on another role is one finding at a socket outlet that is swapped as a whole",
      lines: [ring[0]!, "socket-1.b socket-2.a L:N N:L E:E", "socket-2.b socket-3.a N:L L:N E:E", ring[3]!],
      gives: ["danger crossed socket-1.b.L~socket-2.a.N"],
    },
    {
      title: "on another role is one finding a cable where it is crossed in two",
      lines: [...ring, "socket-1.c socket-4.a L:N N:L E:E", "socket-2.c socket-5.a L:N N:L E:E"],
      gives: ["danger crossed socket-1.c.L~socket-4.a.N", "danger crossed socket-2.c.L~socket-5.a.N"],
    },
    {
      title: "of line on earth is crossed",
      lines: [...ring, "socket-1.c socket-4.a L:E E:L N:N"],
      gives: ["danger crossed socket-1.c.E~socket-4.a.L"],
    },
    {
      title: "of neutral on earth is another rule",
      lines: [...ring, "socket-1.c socket-4.a L:L N:E E:N"],
      gives: [],
    },
    {
      title: "of line on the switched line is no polarity fault",
      lines: ["way-1.a rose-1.a L:SL N:N E:E"],
      gives: [],
    },
    {
      title: "swapped with the switched line at a one-way switch is harmless",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s L:SL SL:L E:E"],
      gives: [],
    },
    {
      title: "of neutral at a switch that breaks it is another rule",
      lines: [
        "way-1.a box-1.a",
        "box-1.b lamp-1.a L:L E:E",
        "box-1.c switch-1.s N:L E:E",
        "switch-1.t lamp-1.b SL:N E:E",
      ],
      gives: [],
    },
    {
      title: "of neutral on a switch that it does not go on from is crossed",
      lines: ["way-1.a box-1.a", "box-1.c switch-1.s N:L E:E"],
      gives: ["danger crossed box-1.c.N~switch-1.s.L"],
    },
  ]);
});
