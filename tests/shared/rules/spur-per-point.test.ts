import { describe } from "vitest";
import { spurPerPoint } from "../../../shared/rules/spur-per-point.ts";
import { ring, table } from "./table.ts";

// Common practice, no source: guidance drawings show one unfused spur from a point.
describe("a point of a ring", () => {
  table(spurPerPoint, [
    { title: "may have a spur", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
    {
      title: "has one too many with two",
      lines: [...ring, "socket-1.c socket-4.a", "socket-1.d socket-5.a"],
      gives: ["fix two socket-1"],
    },
    {
      title: "may be a way with one spur, but not with two",
      lines: [...ring, "way-1.c socket-4.a", "way-1.d socket-5.a"],
      gives: ["fix two way-1"],
    },
    {
      title: "may have a spur and any number of fused spurs",
      lines: [...ring, "socket-1.c socket-4.a", "socket-1.d fcu-1.a", "socket-1.e fcu-2.a"],
      gives: [],
    },
    {
      title: "has two where one of them feeds a connection unit and a socket outlet",
      lines: [
        ...ring,
        "socket-1.c socket-4.a",
        "socket-1.d box-1.a",
        "box-1.b fcu-1.a",
        "box-1.c socket-5.a",
      ],
      gives: ["fix two socket-1"],
    },
    {
      title: "may have a spur and a branch of full rating to several points",
      lines: [...ring, "socket-1.c socket-4.a", "socket-1.d socket-5.a 4", "socket-5.b socket-6.a 4"],
      gives: [],
    },
    {
      title: "is of a ring: on a radial branches are free",
      lines: ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4", "socket-1.c socket-3.a 4"],
      gives: [],
    },
    {
      title: "may have a cable that feeds nothing beside its spur",
      lines: [...ring, "socket-1.c socket-4.a", "socket-1.d box-1.a"],
      gives: [],
    },
    {
      title: "with a spur and a branch that nobody has sized may have two",
      lines: [...ring, "socket-1.c socket-4.a", "socket-1.d socket-5.a ?", "socket-5.b socket-6.a"],
      gives: ["missing csaMm2 socket-1.d~socket-5.a"],
    },
    {
      title: "with one branch that nobody has sized has no more than one",
      lines: [...ring, "socket-1.d socket-5.a ?", "socket-5.b socket-6.a"],
      gives: [],
    },
  ]);
});
