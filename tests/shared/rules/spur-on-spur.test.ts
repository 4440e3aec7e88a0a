import { describe } from "vitest";
import { spurOnSpur } from "../../../shared/rules/spur-on-spur.ts";
import { ring, table } from "./table.ts";

// Appendix 15 of BS 7671 and On-Site Guide 7.2.2: an unfused spur feeds one single or one twin socket outlet, or
// one fixed item. The 2.5 mm² spur off a 4 mm² 32 A radial is partly from memory.
describe("a point on an unfused spur", () => {
  table(spurOnSpur, [
    { title: "may be its last", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
    {
      title: "may not feed another, named at the cable between",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a"],
      gives: ["fix beyond socket-4.b~socket-5.a"],
    },
    {
      title: "may not feed two others, named at each cable",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a", "socket-4.c socket-6.a"],
      gives: ["fix beyond socket-4.b~socket-5.a", "fix beyond socket-4.c~socket-6.a"],
    },
    {
      title: "may not feed a row of others: one finding, at the first cable beyond",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a", "socket-5.b socket-6.a"],
      gives: ["fix beyond socket-4.b~socket-5.a"],
    },
    {
      title: "may not feed another through a box",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b box-1.a", "box-1.b socket-5.a"],
      gives: ["fix beyond box-1.a~socket-4.b"],
    },
    {
      title: "may be a connection unit with more behind its fuse, but not looped on before it",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "fcu-1.b socket-5.a"],
      gives: ["fix beyond fcu-1.b~socket-5.a"],
    },
    {
      title: "may have a cable that ends in a box",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b box-1.a"],
      gives: [],
    },
    {
      title: "in cable of full rating may feed another",
      lines: [...ring, "socket-1.c socket-4.a 4", "socket-4.b socket-5.a 4"],
      gives: [],
    },
    {
      title: "off a branch of full rating may be its last only",
      lines: [...ring, "socket-1.c socket-4.a 4", "socket-4.b socket-5.a", "socket-5.b socket-6.a"],
      gives: ["fix beyond socket-5.b~socket-6.a"],
    },
    {
      title: "off a 4 mm² radial may be its last only",
      lines: ["way-1.a socket-1.a 4", "socket-1.b socket-2.a", "socket-2.b socket-3.a"],
      gives: ["fix beyond socket-2.b~socket-3.a"],
    },
    {
      title: "is any point of a 20 A radial: there are no such spurs",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "socket-2.b socket-3.a"],
      extras: { settings: { "way-1": { deviceRatingA: 20 } } },
      gives: [],
    },
    {
      title: "cannot be told before the cable is sized",
      lines: [...ring, "socket-1.c socket-4.a ?", "socket-4.b socket-5.a"],
      gives: ["missing csaMm2 socket-1.c~socket-4.a"],
    },
  ]);
});
