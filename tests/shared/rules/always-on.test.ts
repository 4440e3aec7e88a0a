import { describe } from "vitest";
import { alwaysOn } from "../../../shared/rules/always-on.ts";
import { conductorTable } from "./conductor-table.ts";

describe("a lamp with a switch", () => {
  conductorTable(alwaysOn, [
    {
      title: "goes off with it",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
    {
      title: "stays on where the line passes the switch by",
      lines: ["way-1.a box-1.a", "box-1.b lamp-1.a", "box-1.s switch-1.s"],
      gives: ["fix on lamp-1"],
    },
    {
      title: "stays on where line lands on the switched line",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s", "rose-1.b rose-1.t L:SL"],
      gives: ["fix on rose-1"],
    },
    {
      title: "stays on with another lamp for one reason, and that is one finding",
      lines: ["way-1.a box-1.a", "box-1.b lamp-1.a", "lamp-1.b lamp-2.a", "box-1.s switch-1.s"],
      gives: ["fix on lamp-1"],
    },
    {
      title: "goes off by either of two-way switches",
      lines: ["way-1.a rose-1.a", "rose-1.s switch-1.s", "switch-1.u switch-2.u"],
      extras: { settings: { "switch-1": { switching: "two-way" }, "switch-2": { switching: "two-way" } } },
      gives: [],
    },
    { title: "is something else than a lamp without one", lines: ["way-1.a lamp-1.a"], gives: [] },
    {
      title: "is something else than a lamp whose neighbour has one that works",
      lines: ["way-1.a box-1.a", "box-1.b lamp-1.a", "box-1.s switch-1.s", "box-1.t lamp-2.a"],
      gives: [],
    },
  ]);
});
