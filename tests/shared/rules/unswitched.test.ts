import { describe } from "vitest";
import { unswitched } from "../../../shared/rules/unswitched.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a lamp", () => {
  conductorTable(unswitched, [
    {
      title: "has a switch in its line",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
    { title: "without any switch is never off", lines: ["way-1.a lamp-1.a"], gives: ["fix none lamp-1"] },
    {
      title: "behind a connection unit with a switch is switched",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a", "lamp-1.b lamp-2.a"],
      extras: { settings: { "fcu-1": { switched: true } } },
      gives: [],
    },
    {
      title: "behind a connection unit counts as unswitched where it is not said to have a switch",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a", "lamp-1.b lamp-2.a"],
      gives: ["fix none lamp-1"],
    },
    {
      title: "behind two connection units is switched by the first",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c fcu-2.a", "fcu-2.c lamp-1.a"],
      extras: { settings: { "fcu-1": { switched: true } } },
      gives: [],
    },
    {
      title: "behind an isolator is switched",
      lines: ["way-1.a isolator-1.a", "isolator-1.c lamp-1.a"],
      gives: [],
    },
    {
      title: "beside one with a switch of its own is still unswitched",
      lines: ["way-1.a box-1.a", "box-1.b lamp-1.a", "box-1.s switch-1.s", "box-1.t lamp-2.a"],
      gives: ["fix none lamp-1"],
    },
    {
      title: "on the supply terminals of a switched unit is not switched by it",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.b lamp-1.a"],
      extras: { settings: { "fcu-1": { switched: true } } },
      gives: ["fix none lamp-1"],
    },
    {
      title: "on the supply terminals of an isolator is not switched by it",
      lines: ["way-1.a isolator-1.a", "isolator-1.b lamp-1.a", "isolator-1.c lamp-2.a"],
      gives: ["fix none lamp-1"],
    },
    {
      title: "behind an isolator that is fed at its load side is switched all the same",
      lines: ["way-1.a isolator-1.c", "isolator-1.a lamp-1.a"],
      gives: [],
    },
    {
      title: "that can be fed past the unit as well is not switched by it",
      lines: ["way-1.a isolator-1.a", "isolator-1.c lamp-1.a", "way-1.b lamp-1.b"],
      gives: ["fix none lamp-1"],
    },
    {
      title: "at a rose without a switch has no switched line",
      lines: ["way-1.a rose-1.a"],
      gives: ["fix no-return rose-1"],
    },
    {
      title: "at a rose whose drop brings no switched line back",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s -SL"],
      gives: ["fix no-return rose-1.s.SL~switch-1.s.SL"],
    },
    {
      title: "at a rose whose drop takes no line there",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s -L"],
      gives: ["fix no-return rose-1.s.L~switch-1.s.L"],
    },
    {
      title: "at the second of two roses in a row is judged by its own switch",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s", "rose-1.b rose-2.a"],
      gives: ["fix no-return rose-2"],
    },
    {
      title: "at a rose with its switch is right",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s"],
      gives: [],
    },
    { title: "at a rose that no line reaches is not judged", lines: ["way-1.a rose-1.a -L"], gives: [] },
    { title: "that does not light at all is not judged", lines: ["way-1.a lamp-1.a -N"], gives: [] },
  ]);
});
