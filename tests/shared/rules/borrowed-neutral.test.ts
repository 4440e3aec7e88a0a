import { describe } from "vitest";
import { borrowedNeutral } from "../../../shared/rules/borrowed-neutral.ts";
import { conductorTable } from "./conductor-table.ts";

describe("the neutral of a point", () => {
  conductorTable(borrowedNeutral, [
    {
      title: "is its own in two circuits side by side",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a"],
      gives: [],
    },
    {
      title: "is borrowed where only another circuit brings it",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a L:L E:E", "socket-1.b socket-2.b N:N"],
      gives: ["danger only socket-1.b.N~socket-2.b.N"],
    },
    {
      title: "is borrowed too where it reaches its own circuit and another",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a", "socket-1.b socket-2.b N:N"],
      gives: ["danger also socket-1.b.N~socket-2.b.N"],
    },
    {
      title: "is borrowed straight from the other way",
      lines: ["way-1.a socket-1.a L:L E:E", "way-2.a socket-1.b N:N"],
      gives: ["danger only socket-1.b.N~way-2.a.N"],
    },
    {
      title: "may meet others at the bar, and earths may meet anywhere",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a", "socket-1.b socket-2.b E:E"],
      gives: [],
    },
    {
      title: "is not borrowed where the lines meet as well: that is two ways in one circuit",
      lines: ["way-1.a socket-1.a", "way-2.a socket-2.a", "socket-1.b socket-2.b"],
      gives: [],
    },
    { title: "is missing, not borrowed, where none comes", lines: ["way-1.a socket-1.a L:L E:E"], gives: [] },
    {
      title: "is borrowed behind a connection unit as well",
      lines: ["way-1.a fcu-1.a", "fcu-1.c lamp-1.a L:L E:E", "way-2.a socket-1.a", "socket-1.b lamp-1.b N:N"],
      gives: ["danger only lamp-1.b.N~socket-1.b.N"],
    },
  ]);
});
