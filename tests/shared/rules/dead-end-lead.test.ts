import { describe } from "vitest";
import { deadEndLead } from "../../../shared/rules/dead-end-lead.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a cable", () => {
  conductorTable(deadEndLead, [
    {
      title: "that goes on from a junction box ends at a point",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a"],
      gives: [],
    },
    {
      title: "that ends in a junction box would be live there",
      lines: [...ring, "socket-1.c box-1.a"],
      gives: ["danger live box-1.a~socket-1.c"],
    },
    {
      title: "without line that ends in a junction box is a dead end",
      lines: [...ring, "socket-1.c box-1.a -L"],
      gives: ["fix dead box-1.a~socket-1.c"],
    },
    {
      title: "in two leads that ends in a junction box is one dead end",
      lines: [...ring, "socket-1.c box-1.a L:L", "socket-1.d box-1.b N:N E:E"],
      gives: ["danger live box-1.a~socket-1.c"],
    },
    {
      title: "that ends at an isolator which feeds nothing would be live there",
      lines: ["way-1.a isolator-1.a"],
      gives: ["danger live isolator-1.a~way-1.a"],
    },
    {
      title: "that ends at a cooker control with a socket outlet feeds that",
      lines: ["way-1.a control-1.a"],
      extras: { settings: { "control-1": { hasSocketOutlet: true } } },
      gives: [],
    },
    {
      title: "that ends at a connection unit ends at a point",
      lines: [...ring, "socket-1.c fcu-1.a"],
      gives: [],
    },
    {
      title: "that no way reaches is only noted, once for all that hang together",
      lines: [...ring, "socket-4.a socket-5.a", "socket-5.b box-1.a"],
      gives: ["note island box-1.a~socket-5.b"],
    },
    {
      title: "to a box with a switch and a lamp goes on",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
  ]);
});
