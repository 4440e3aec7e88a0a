import { describe } from "vitest";
import { ringThroughFuse } from "../../../shared/rules/ring-through-fuse.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("the load side of a connection unit", () => {
  conductorTable(ringThroughFuse, [
    {
      title: "is fed by its fuse alone",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a"],
      gives: [],
    },
    {
      title: "closes a ring that goes in at the supply side",
      lines: ["way-1.a socket-1.a", "socket-1.b fcu-1.a", "fcu-1.c socket-2.a", "socket-2.b way-1.b"],
      gives: ["fix through fcu-1"],
    },
    {
      title: "is fed past the fuse where it is joined to the ring as well",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "socket-4.b socket-2.c"],
      gives: ["danger parallel fcu-1"],
    },
    {
      title: "is fed past the fuse where it is joined to the same radial",
      lines: ["way-1.a socket-1.a 6", "socket-1.b fcu-1.a", "fcu-1.c socket-2.a", "socket-2.b socket-1.c"],
      gives: ["danger parallel fcu-1"],
    },
    {
      title: "is fed by two fuses where two units share it",
      lines: [
        ...ring,
        "socket-1.c fcu-1.a",
        "socket-2.c fcu-2.a",
        "fcu-1.c socket-4.a",
        "fcu-2.c socket-4.b",
      ],
      gives: ["danger parallel fcu-1"],
    },
    {
      title: "that is joined to the circuit of another way is the matter of the rule on two ways",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "way-2.a socket-4.b"],
      gives: [],
    },
    {
      title: "may feed another unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c fcu-2.a", "fcu-2.c lamp-1.a"],
      gives: [],
    },
    {
      title: "is not fed past the fuse by a lead within the unit: that lead is another rule",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a", "fcu-1.b fcu-1.d L:L"],
      gives: [],
    },
  ]);
});
