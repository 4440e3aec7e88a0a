import { describe } from "vitest";
import { leastSize } from "../../../shared/rules/least-size.ts";
import { ring, table } from "./table.ts";

// BS 7671 524.1, Table 52.3: 1.5 mm² for power, 1.0 mm² for lighting.
describe("the least size of a fixed cable", () => {
  table(leastSize, [
    { title: "is 1.5 mm² to socket outlets", lines: ["way-1.a socket-1.a 1.5"], gives: [] },
    {
      title: "is not met by 1.0 mm² to socket outlets",
      lines: ["way-1.a socket-1.a 1"],
      gives: ["fix power socket-1.a~way-1.a"],
    },
    {
      title: "is not met by 1.0 mm² behind a fuse to socket outlets",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a 1"],
      gives: ["fix power fcu-1.c~socket-4.a"],
    },
    {
      title: "is not met by 1.0 mm² behind a fuse to a boiler",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c boiler-1.a 1"],
      extras: { settings: { "boiler-1": { appliance: "boiler" } } },
      gives: ["fix power boiler-1.a~fcu-1.c"],
    },
    { title: "is 1.0 mm² to lights", lines: ["way-1.a rose-1.a 1", "rose-1.s switch-1.s 1"], gives: [] },
    {
      title: "is not met by 0.75 mm² to a switch",
      lines: ["way-1.a rose-1.a 1", "rose-1.s switch-1.s 0.75"],
      gives: ["fix lighting rose-1.s~switch-1.s"],
    },
    {
      title: "is 1.0 mm² to lights behind a fuse",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a 1", "lamp-1.b lamp-2.a 0.5"],
      gives: ["fix lighting lamp-1.b~lamp-2.a"],
    },
    {
      title: "is 1.0 mm² to a fan and its fuse on a lighting circuit",
      lines: ["way-1.a rose-1.a 1", "rose-1.b fcu-1.a 1", "fcu-1.c fan-1.a 1"],
      extras: { settings: { "fan-1": { appliance: "extractor-fan" } } },
      gives: [],
    },
    {
      title: "is 1.5 mm² up to the last socket outlet of a mixed circuit and 1.0 mm² beyond",
      lines: ["way-1.a lamp-1.a 1", "lamp-1.b socket-1.a 1.5", "socket-1.b lamp-2.a 1"],
      gives: ["fix power lamp-1.a~way-1.a"],
    },
    {
      title: "counts all round a ring",
      lines: [ring[0]!, "socket-1.b socket-2.a 1", ring[2]!, ring[3]!],
      gives: ["fix power socket-1.b~socket-2.a"],
    },
    {
      title: "cannot be told of a cable not yet sized",
      lines: ["way-1.a socket-1.a ?"],
      gives: ["missing csaMm2 socket-1.a~way-1.a"],
    },
  ]);
});
