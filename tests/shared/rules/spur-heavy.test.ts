import { describe } from "vitest";
import { spurHeavy } from "../../../shared/rules/spur-heavy.ts";
import { ring, table } from "./table.ts";

describe("a branch from a ring", () => {
  table(spurHeavy, [
    { title: "of ordinary cable is a spur", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
    {
      title: "of full rating to several points has to be justified",
      lines: [...ring, "socket-1.c socket-4.a 4", "socket-4.b socket-5.a 4"],
      gives: ["query several socket-1.c~socket-4.a"],
    },
    {
      title: "of full rating to one point is a spur like any other",
      lines: [...ring, "socket-1.c socket-4.a 4"],
      gives: [],
    },
    {
      title: "is of a ring: a radial may branch",
      lines: ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4", "socket-1.c socket-3.a 4"],
      gives: [],
    },
    {
      title: "with several points cannot be told before it is sized",
      lines: [...ring, "socket-1.c socket-4.a ?", "socket-4.b socket-5.a"],
      gives: ["missing csaMm2 socket-1.c~socket-4.a"],
    },
  ]);
});
