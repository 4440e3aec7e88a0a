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
  ]);
});
