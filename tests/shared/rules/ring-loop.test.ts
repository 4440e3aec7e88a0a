import { describe } from "vitest";
import { ringLoop } from "../../../shared/rules/ring-loop.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a loop", () => {
  conductorTable(ringLoop, [
    { title: "through the way is a ring", lines: ring, gives: [] },
    {
      title: "at the end of a leg is none",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b socket-2.a",
        "socket-2.b socket-3.a",
        "socket-3.b socket-1.c",
      ],
      gives: ["fix loop socket-1.b~socket-2.a"],
    },
    {
      title: "of two cables side by side in a branch is none",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "socket-1.c socket-2.b"],
      gives: ["fix loop socket-1.b~socket-2.a"],
    },
    {
      title: "at a point of a ring is none",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a", "socket-5.b socket-1.d"],
      gives: ["fix loop socket-1.c~socket-4.a"],
    },
    {
      title: "behind a fuse is none, but protected",
      lines: ["way-1.a fcu-1.a", "fcu-1.c socket-1.a", "socket-1.b socket-2.a", "socket-2.b fcu-1.d"],
      gives: ["query fused fcu-1.c~socket-1.a"],
    },
    { title: "is not made by a branch", lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a"], gives: [] },
    {
      title: "is not made by two units that feed one load side: that is another rule",
      lines: [
        ...ring,
        "socket-1.c fcu-1.a",
        "socket-2.c fcu-2.a",
        "fcu-1.c socket-4.a",
        "fcu-2.c socket-4.b",
      ],
      gives: [],
    },
    {
      title: "is not made by the straps between two-way switches",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s", "switch-1.u switch-2.u"],
      extras: { settings: { "switch-1": { switching: "two-way" }, "switch-2": { switching: "two-way" } } },
      gives: [],
    },
  ]);
});
