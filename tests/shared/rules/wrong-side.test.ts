import { describe } from "vitest";
import { wrongSide } from "../../../shared/rules/wrong-side.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("the feed of a unit with two sides", () => {
  conductorTable(wrongSide, [
    {
      title: "lands on the supply side",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a"],
      gives: [],
    },
    {
      title: "may loop on from the supply side",
      lines: ["way-1.a isolator-1.a", "isolator-1.b socket-1.a", "isolator-1.c heater-1.a"],
      gives: [],
    },
    {
      title: "is wrong at the load side of a connection unit",
      lines: [...ring, "socket-1.c fcu-1.c", "fcu-1.a lamp-1.a"],
      gives: ["fix fed-from-load fcu-1"],
    },
    {
      title: "is wrong at the load side of an isolator",
      lines: ["way-1.a isolator-1.c", "isolator-1.a heater-1.a"],
      gives: ["fix fed-from-load isolator-1"],
    },
    {
      title: "is wrong at the load side of a cooker control",
      lines: ["way-1.a control-1.d", "control-1.a cooker-1.a"],
      gives: ["fix fed-from-load control-1"],
    },
    {
      title: "is wrong though nothing is fed yet",
      lines: [...ring, "socket-1.c fcu-1.c"],
      gives: ["fix fed-from-load fcu-1"],
    },
    { title: "is not judged where no way reaches", lines: ["fcu-1.c lamp-1.a"], gives: [] },
    {
      title: "is wrong where a ring loops through the load terminals of an isolator",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b isolator-1.c",
        "isolator-1.d socket-2.a",
        "socket-2.b way-1.b",
        "isolator-1.a heater-1.a",
      ],
      gives: ["fix fed-from-load isolator-1"],
    },
    {
      title: "is wrong so with nothing on the supply terminals too, and at a control",
      lines: ["way-1.a socket-1.a", "socket-1.b control-1.c", "control-1.d socket-2.a", "socket-2.b way-1.b"],
      gives: ["fix fed-from-load control-1"],
    },
    {
      title: "is wrong where a loop in a branch ends at the load terminals",
      lines: [
        "way-1.a box-1.a",
        "box-1.b box-2.a",
        "box-1.c box-3.a",
        "box-2.b isolator-1.c",
        "box-3.b isolator-1.d",
        "isolator-1.a heater-1.a",
      ],
      gives: ["fix fed-from-load isolator-1"],
    },
    {
      title: "is right where a ring loops through the supply terminals",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b isolator-1.a",
        "isolator-1.b socket-2.a",
        "socket-2.b way-1.b",
        "isolator-1.c heater-1.a",
      ],
      gives: [],
    },
    {
      title: "is neither where a ring passes through an isolator",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b isolator-1.a",
        "isolator-1.c socket-2.a",
        "socket-2.b way-1.b",
      ],
      gives: [],
    },
    {
      title: "is told by its neutral where no line arrives",
      lines: ["way-1.a isolator-1.c -L", "isolator-1.a heater-1.a"],
      gives: ["fix fed-from-load isolator-1"],
    },
  ]);
});
