import { describe } from "vitest";
import { selfLead } from "../../../shared/rules/self-lead.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a lead with both ends in one station", () => {
  conductorTable(selfLead, [
    { title: "is none of a sound ring", lines: ring, gives: [] },
    {
      title: "does nothing in a socket outlet",
      lines: [...ring, "socket-1.c socket-1.d L:L"],
      gives: ["fix loop socket-1.c~socket-1.d"],
    },
    {
      title: "bypasses the fuse of a connection unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.b fcu-1.c L:L"],
      gives: ["danger bypass fcu-1.b~fcu-1.c"],
    },
    {
      title: "bypasses one pole of an isolator",
      lines: ["way-1.a isolator-1.a", "isolator-1.b isolator-1.c N:N"],
      gives: ["danger bypass isolator-1.b~isolator-1.c"],
    },
    {
      title: "on one side of a connection unit does nothing",
      lines: [...ring, "fcu-1.a fcu-1.b"],
      gives: ["fix loop fcu-1.a~fcu-1.b"],
    },
    {
      title: "joins the earths of a connection unit, which are one already",
      lines: [...ring, "fcu-1.a fcu-1.c E:E"],
      gives: ["fix loop fcu-1.a~fcu-1.c"],
    },
    { title: "from line to neutral is a short", lines: [...ring, "socket-1.c socket-1.d L:N"], gives: [] },
    {
      title: "from line to switched line leaves the lamp on",
      lines: ["way-1.a rose-1.a", "rose-1.b rose-1.t L:SL"],
      gives: [],
    },
  ]);
});
