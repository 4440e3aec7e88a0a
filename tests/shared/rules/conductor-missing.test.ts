import { describe } from "vitest";
import { conductorMissing } from "../../../shared/rules/conductor-missing.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("line and neutral", () => {
  conductorTable(conductorMissing, [
    { title: "reach all of a sound ring", lines: ring, gives: [] },
    {
      title: "are wanted together: without neutral a live point looks dead",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a -N", "socket-2.b socket-3.a"],
      gives: ["danger neutral-live socket-1.b.N~socket-2.a.N"],
    },
    {
      title: "are both named where only earth comes",
      lines: ["way-1.a socket-1.a E:E"],
      gives: ["fix neutral socket-1.a.N~way-1.a.N", "fix line socket-1.a.L~way-1.a.L"],
    },
    {
      title: "are wanted together: without line a point is dead",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a -L"],
      gives: ["fix line socket-1.b.L~socket-2.a.L"],
    },
    {
      title: "are named at the core that stops a switch, its lamp and all beyond",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s SL:SL E:E", "box-1.t lamp-1.a"],
      gives: ["fix line box-1.s.L~switch-1.s.L"],
    },
    {
      title: "are not asked of a switch as neutral, nor of a junction box",
      lines: ["way-1.a switch-1.a -N", "way-1.b box-1.a -N"],
      gives: [],
    },
    {
      title: "reach a lamp whose switch is off for now",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
    {
      title: "reach a lamp whose neutral passes through a switch: that is another rule",
      lines: [
        "way-1.a box-1.a",
        "box-1.b lamp-1.a L:L E:E",
        "box-1.c switch-1.s N:L E:E",
        "switch-1.t lamp-1.b SL:N E:E",
      ],
      gives: [],
    },
    { title: "are not asked for where no way reaches", lines: ["socket-1.a socket-2.a L:L"], gives: [] },
  ]);
});
