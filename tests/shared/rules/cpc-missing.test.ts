import { describe } from "vitest";
import { cpcMissing } from "../../../shared/rules/cpc-missing.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

// BS 7671 411.3.1.1: a protective conductor at every point and accessory. From memory.
describe("the protective conductor", () => {
  conductorTable(cpcMissing, [
    { title: "reaches all of a sound ring", lines: ring, gives: [] },
    {
      title: "is lost at one place for two points beyond it, and that is one finding",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a -E", "socket-2.b socket-3.a"],
      gives: ["danger missing socket-1.b.E~socket-2.a.E"],
    },
    {
      title: "is lost at two places, and those are two findings",
      lines: ["way-1.a socket-1.a -E", "socket-1.b socket-2.a -E"],
      gives: ["danger missing socket-1.a.E~way-1.a.E", "danger missing socket-1.b.E~socket-2.a.E"],
    },
    {
      title: "of a ring may be open in one place and still reach every point",
      lines: [ring[0]!, "socket-1.b socket-2.a -E", ring[2]!, ring[3]!],
      gives: [],
    },
    {
      title: "has to reach a switch",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s L:L SL:SL"],
      gives: ["danger missing rose-1.s.E~switch-1.s.E"],
    },
    {
      title: "has to reach a connection unit, an isolator and a control",
      lines: ["way-1.a fcu-1.a -E", "way-1.b isolator-1.a -E", "way-1.c control-1.a -E"],
      gives: [
        "danger missing fcu-1.a.E~way-1.a.E",
        "danger missing isolator-1.a.E~way-1.b.E",
        "danger missing control-1.a.E~way-1.c.E",
      ],
    },
    { title: "is not asked for at a junction box by itself", lines: ["way-1.a box-1.a -E"], gives: [] },
    {
      title: "passes a connection unit from either side",
      lines: ["way-1.a fcu-1.a", "fcu-1.c lamp-1.a"],
      gives: [],
    },
    {
      title: "may come from another way, for earths may meet",
      lines: ["way-1.a socket-1.a -E", "way-2.a socket-1.b E:E"],
      gives: [],
    },
    {
      title: "is not asked for where nothing else reaches",
      lines: ["socket-1.a socket-2.a L:L N:N"],
      gives: [],
    },
    {
      title: "is asked for where line and neutral arrive crossed",
      lines: ["way-1.a socket-1.a L:N N:L"],
      gives: ["danger missing socket-1.a.E~way-1.a.E"],
    },
    {
      title: "is asked for beyond a point that is swapped",
      lines: ["way-1.a socket-1.a L:N N:L", "socket-1.b socket-2.a"],
      gives: ["danger missing socket-1.a.E~way-1.a.E"],
    },
    {
      title: "is asked for where only line arrives, on the neutral",
      lines: ["way-1.a socket-1.a L:N"],
      gives: ["danger missing socket-1.a.E~way-1.a.E"],
    },
    {
      title: "is there where line and neutral are crossed and earth is not",
      lines: ["way-1.a socket-1.a L:N N:L E:E", "socket-1.b socket-2.a"],
      gives: [],
    },
    {
      title: "is not asked for at a swap that no way reaches",
      lines: ["socket-1.a socket-2.a L:N N:L"],
      gives: [],
    },
    {
      title: "is named by the lead that is crossed in its place",
      lines: ["way-1.a socket-1.a L:L N:N E:L"],
      gives: ["danger missing socket-1.a.L~way-1.a.E"],
    },
  ]);
});
