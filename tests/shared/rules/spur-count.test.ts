import { describe } from "vitest";
import { spurCount } from "../../../shared/rules/spur-count.ts";
import { ring, table } from "./table.ts";

// Appendix 15 of BS 7671 and On-Site Guide 7.2.2: unfused spurs not more than the points on the ring.
describe("the spurs of a ring", () => {
  table(spurCount, [
    {
      title: "may be as many as its points",
      lines: [...ring, "socket-1.c socket-4.a", "socket-2.c socket-5.a", "socket-3.c socket-6.a"],
      gives: [],
    },
    {
      title: "have to be justified where there are more",
      lines: [
        ...ring,
        "socket-1.c socket-4.a",
        "socket-2.c socket-5.a",
        "socket-3.c socket-6.a",
        "way-1.c socket-7.a",
      ],
      gives: ["query many way-1"],
    },
    {
      title: "count a box on the ring as no point of it",
      lines: [
        "way-1.a box-1.a",
        "box-1.b socket-1.a",
        "socket-1.b way-1.b",
        "box-1.c socket-2.a",
        "socket-1.c socket-3.a",
      ],
      gives: ["query many way-1"],
    },
    {
      title: "do not count where they are fused",
      lines: [
        ...ring,
        "socket-1.c socket-4.a",
        "socket-2.c socket-5.a",
        "socket-3.c socket-6.a",
        "way-1.c fcu-1.a",
      ],
      gives: [],
    },
    {
      title: "do not count where they are of full rating and feed several points",
      lines: [
        ...ring,
        "socket-1.c socket-4.a",
        "socket-2.c socket-5.a",
        "socket-3.c socket-6.a",
        "way-1.c socket-7.a 4",
        "socket-7.b socket-8.a 4",
      ],
      gives: [],
    },
    {
      title: "may be too many where a branch that nobody has sized is one",
      lines: [
        ...ring,
        "socket-1.c socket-4.a",
        "socket-2.c socket-5.a",
        "socket-3.c socket-6.a",
        "way-1.c socket-7.a ?",
        "socket-7.b socket-8.a",
      ],
      gives: ["missing csaMm2 socket-7.a~way-1.c"],
    },
  ]);
});
