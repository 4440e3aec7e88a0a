import { describe } from "vitest";
import { notServed } from "../../../shared/rules/not-served.ts";
import { conductorTable } from "./conductor-table.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { ring } from "./table.ts";

const wants = (...ids: string[]) => ({ wants: [{ kind: "served" as const, stations: ids.map(stationId) }] });

describe("a point that the task wants alive", () => {
  conductorTable(notServed, [
    { title: "is served on a sound ring", lines: ring, extras: wants("socket-1", "socket-3"), gives: [] },
    {
      title: "is not served without a cable",
      lines: ring,
      extras: { ...wants("socket-1", "socket-4"), also: ["socket-4"] },
      gives: ["fix not-served socket-4"],
    },
    {
      title: "is not served where the board has no such station",
      lines: ring,
      extras: wants("socket-9"),
      gives: ["fix not-served socket-9"],
    },
    {
      title: "is not served without neutral, and the missing core is the cause",
      lines: ["way-1.a socket-1.a -N"],
      extras: wants("socket-1"),
      gives: ["fix not-served socket-1.a.N~way-1.a.N"],
    },
    {
      title: "is served without earth, which is a fault of another kind",
      lines: ["way-1.a socket-1.a -E"],
      extras: wants("socket-1"),
      gives: [],
    },
    {
      title: "is a lamp that lights in some position of its switch",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      extras: wants("lamp-1"),
      gives: [],
    },
    {
      title: "is no rose whose switch cable is not there",
      lines: ["way-1.a rose-1.a"],
      extras: wants("rose-1"),
      gives: ["fix not-served rose-1"],
    },
    {
      title: "is served behind a connection unit, fed from either side",
      lines: ["way-1.a fcu-1.c", "fcu-1.a socket-1.a"],
      extras: wants("fcu-1", "socket-1"),
      gives: [],
    },
    {
      title: "may be a junction box or a switch",
      lines: ["way-1.a box-1.a", "box-1.b switch-1.a"],
      extras: wants("box-1", "switch-1"),
      gives: [],
    },
    { title: "is nothing that nobody wants", lines: ["socket-1.a socket-2.a"], gives: [] },
  ]);
});
