import { describe } from "vitest";
import { unswitched } from "../../../shared/rules/unswitched.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a lamp", () => {
  conductorTable(unswitched, [
    {
      title: "has a switch in its line",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
    { title: "without any switch is never off", lines: ["way-1.a lamp-1.a"], gives: ["fix none lamp-1"] },
    {
      title: "behind a connection unit with a switch is switched",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a", "lamp-1.b lamp-2.a"],
      extras: { settings: { "fcu-1": { switched: true } } },
      gives: [],
    },
    {
      title: "behind a connection unit counts as unswitched where it is not said to have a switch",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a", "lamp-1.b lamp-2.a"],
      gives: ["fix none lamp-1"],
    },
    {
      title: "behind two connection units is switched by the first",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c fcu-2.a", "fcu-2.c lamp-1.a"],
      extras: { settings: { "fcu-1": { switched: true } } },
      gives: [],
    },
    {
      title: "behind an isolator is switched",
      lines: ["way-1.a isolator-1.a", "isolator-1.c lamp-1.a"],
      gives: [],
    },
    {
      title: "beside one with a switch of its own is still unswitched",
      lines: ["way-1.a box-1.a", "box-1.b lamp-1.a", "box-1.s switch-1.s", "box-1.t lamp-2.a"],
      gives: ["fix none lamp-1"],
    },
    { title: "that does not light at all is not judged", lines: ["way-1.a lamp-1.a -N"], gives: [] },
  ]);
});
