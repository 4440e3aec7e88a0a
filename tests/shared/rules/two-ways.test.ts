import { describe } from "vitest";
import { twoWays } from "../../../shared/rules/two-ways.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("the lines of two ways", () => {
  conductorTable(twoWays, [
    { title: "do not meet in two circuits side by side", lines: [...ring, "way-2.a socket-4.a"], gives: [] },
    {
      title: "meet where the ends of a ring are in two ways",
      lines: [ring[0]!, ring[1]!, ring[2]!, "socket-3.b way-2.a"],
      gives: ["danger ring-ends way-1"],
    },
    {
      title: "meet where the legs of two rings are crossed",
      lines: ["way-1.a socket-1.a", "socket-1.b way-2.b", "way-2.a socket-2.a", "socket-2.b way-1.b"],
      gives: ["danger ring-ends way-1"],
    },
    {
      title: "meet where a cable joins two circuits that are too small for a ring",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a", "socket-1.b socket-2.b"],
      extras: { settings: { "way-2": { deviceRatingA: 16 } } },
      gives: ["danger line way-1"],
    },
    {
      title: "meet at a lead from way to way",
      lines: ["way-1.a way-2.a L:L"],
      gives: ["danger line way-1"],
    },
    {
      title: "do not meet where neutral and earth of two circuits do",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a", "socket-1.b socket-2.b N:N E:E"],
      gives: [],
    },
    {
      title: "meet at the two sides of a connection unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "way-2.a socket-4.b"],
      gives: ["danger line way-1"],
    },
    {
      title: "meet so the other way round",
      lines: [...ring, "socket-1.c fcu-1.c", "fcu-1.a socket-4.a", "way-2.a socket-4.b"],
      gives: ["danger line way-1"],
    },
    {
      title: "meet where each comes through a fuse of its own",
      lines: ["way-1.a fcu-1.a", "way-2.a fcu-2.a", "fcu-1.c socket-1.a", "fcu-2.c socket-1.b"],
      gives: ["danger line way-1"],
    },
    {
      title: "meet behind two fuses in a row",
      lines: ["way-1.a fcu-1.a", "fcu-1.c fcu-2.a", "fcu-2.c socket-1.a", "way-2.a socket-1.b"],
      gives: ["danger line way-1"],
    },
    {
      title: "meet through the contacts of an isolator",
      lines: ["way-1.a isolator-1.a", "way-2.a isolator-1.c"],
      extras: { settings: { "way-2": { deviceRatingA: 16 } } },
      gives: ["danger line way-1"],
    },
    {
      title: "do not meet in the two sides of a unit that one way feeds",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a", "way-2.a socket-5.a"],
      gives: [],
    },
    {
      title: "meet at the two straps of one switch, which would carry both",
      lines: ["way-1.a switch-1.s L:strap1", "way-2.a switch-1.s L:strap2"],
      extras: { settings: { "switch-1": { switching: "two-way" } } },
      gives: ["danger line way-1"],
    },
  ]);
});
