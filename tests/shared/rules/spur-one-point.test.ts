import { describe } from "vitest";
import { spurOnePoint } from "../../../shared/rules/spur-one-point.ts";
import { ring, table } from "./table.ts";

// Appendix 15 of BS 7671 and On-Site Guide 7.2.2: an unfused spur feeds one single or one twin socket outlet, or
// one fixed item. The 2.5 mm² spur off a 4 mm² 32 A radial is partly from memory.
describe("an unfused spur", () => {
  table(spurOnePoint, [
    { title: "may feed one point", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
    {
      title: "may pass a box on its way to one point",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a"],
      gives: [],
    },
    {
      title: "may not feed two points from a box",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a", "box-1.c socket-5.a"],
      gives: ["fix several box-1.a~socket-1.c"],
    },
    {
      title: "may not feed a connection unit and a socket outlet from a box",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b fcu-1.a", "box-1.c socket-5.a"],
      gives: ["fix several box-1.a~socket-1.c"],
    },
    {
      title: "with one point after the other is another rule",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a"],
      gives: [],
    },
    {
      title: "may feed any number behind a connection unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c box-1.a", "box-1.b socket-4.a", "box-1.c socket-5.a"],
      gives: [],
    },
    {
      title: "of full rating is no such spur",
      lines: [...ring, "socket-1.c box-1.a 4", "box-1.b socket-4.a 4", "box-1.c socket-5.a 4"],
      gives: [],
    },
    {
      title: "of small cable further out on a branch of full rating is one",
      lines: [
        ...ring,
        "socket-1.c socket-4.a 4",
        "socket-4.b box-1.a",
        "box-1.b socket-5.a",
        "box-1.c socket-6.a",
      ],
      gives: ["fix several box-1.a~socket-4.b"],
    },
    {
      title: "off a radial of 4 mm² may not feed two either",
      lines: ["way-1.a socket-1.a 4", "socket-1.b box-1.a", "box-1.b socket-2.a", "box-1.c socket-3.a"],
      gives: ["fix several box-1.a~socket-1.b"],
    },
    {
      title: "is never the only leg of a way",
      lines: ["way-1.a box-1.a", "box-1.b socket-1.a", "box-1.c socket-2.a"],
      gives: [],
    },
    {
      title: "with a loop of two points at its end feeds both",
      lines: [
        ...ring,
        "socket-1.c box-1.a",
        "box-1.b socket-4.a",
        "box-1.c socket-5.a",
        "socket-4.b socket-5.b",
      ],
      gives: ["fix several box-1.a~socket-1.c"],
    },
    {
      title: "must be sized before two points on it can be judged",
      lines: [...ring, "socket-1.c box-1.a ?", "box-1.b socket-4.a", "box-1.c socket-5.a"],
      gives: ["missing csaMm2 box-1.a~socket-1.c"],
    },
    {
      title: "cannot be told without the rating of the device",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a", "box-1.c socket-5.a"],
      extras: { settings: { "way-1": { deviceRatingA: undefined } } },
      gives: ["missing deviceRatingA way-1"],
    },
    {
      title: "is of a circuit of socket outlets: a small branch of lights is held to its device",
      lines: ["way-1.a rose-1.a 1.5", "rose-1.b box-1.a 1", "box-1.b rose-2.a 1", "box-1.c rose-3.a 1"],
      extras: { settings: { "way-1": { deviceRatingA: 20 } } },
      gives: [],
    },
  ]);
});
