import { describe, expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { ringCable } from "../../../shared/rules/ring-cable.ts";
import { ring, table } from "./table.ts";
import { wire } from "./wire.ts";

const with2nd = (words: string) => [ring[0]!, `socket-1.b socket-2.a ${words}`, ring[2]!, ring[3]!];
const second = "socket-1.b~socket-2.a";

// BS 7671 433.1.204: 2.5 mm² copper at least, and Iz not below 20 A as installed. Table 4D5: 2.5 mm² carries
// 20 A by method A (from memory), 27 A by C, 21 A by 100 and 102, 17 A by 101, 13.5 A by 103.
describe("each cable of a ring", () => {
  table(ringCable, [
    { title: "passes in 2.5 mm² clipped direct", lines: ring, gives: [] },
    { title: "passes at just 20 A by method A", lines: with2nd("method-A"), gives: [] },
    { title: "passes at 21 A by method 100", lines: with2nd("method-100"), gives: [] },
    { title: "passes at 21 A by method 102", lines: with2nd("method-102"), gives: [] },
    {
      title: "fails at 17 A by method 101",
      lines: with2nd("method-101"),
      gives: [`fix underrated ${second}`],
    },
    {
      title: "fails at 13.5 A by method 103",
      lines: with2nd("method-103"),
      gives: [`fix underrated ${second}`],
    },
    { title: "passes in 4 mm² where 2.5 mm² would not", lines: with2nd("4 method-101"), gives: [] },
    {
      title: "fails in 1.5 mm² though it carries 20 A",
      lines: with2nd("1.5"),
      gives: [`fix small ${second}`],
    },
    {
      title: "may have a single protective conductor of any size in it",
      lines: [ring[0]!, "socket-1.b socket-2.a L:L N:N", "socket-1.c socket-2.c 1.5 E:E", ring[2]!, ring[3]!],
      gives: [],
    },
    { title: "must be sized", lines: with2nd("?"), gives: [`missing csaMm2 ${second}`] },
    {
      title: "is judged on a ring of connection units that feed nothing yet",
      lines: ["way-1.a fcu-1.a 1.5", "fcu-1.b way-1.b"],
      gives: ["fix small fcu-1.a~way-1.a"],
    },
    {
      title: "is not asked for round a loop of lights, nor does an idle connection unit in it change that",
      lines: ["way-1.a lamp-1.a 1.5", "lamp-1.b fcu-1.a 1.5", "fcu-1.b way-1.b 1.5"],
      gives: [],
    },
    {
      title: "is asked for in the legs of a ring that is still open",
      lines: [ring[0]!, "socket-1.b socket-2.a 1.5", ring[3]!],
      gives: [`fix small ${second}`],
    },
    {
      title: "is asked in the legs of an open ring whether it could carry a ring's share",
      lines: [ring[0]!, "socket-1.b socket-2.a method-103", ring[3]!],
      gives: [`fix underrated ${second}`],
    },
    {
      title: "is asked of the one leg there is where the task wants a ring",
      lines: ["way-1.a socket-1.a 1.5"],
      extras: { wants: [{ kind: "shape", of: stationId("socket-1"), shape: "ring" }] },
      gives: ["fix small socket-1.a~way-1.a"],
    },
    {
      title: "passes in the legs of an open ring in 2.5 mm²",
      lines: [ring[0]!, ring[1]!, ring[3]!],
      gives: [],
    },
    { title: "is not asked for on a radial", lines: ["way-1.a socket-1.a 1.5"], gives: [] },
    { title: "is not asked for on a spur", lines: [...ring, "socket-1.c socket-4.a 1.5"], gives: [] },
  ]);

  // Table 4D5: 1.5 mm² clipped direct carries 20 A (method C), so a 32 A device does not protect it, closed or not.
  it("is said to be too small beside the open ring, and what the open ring explains is not", () => {
    const lines = [ring[0]!, "socket-1.b socket-2.a 1.5", ring[3]!];
    const { findings } = judge(wire(lines));
    expect(findings.map(({ id }) => id)).toEqual(["ring-open/open/way-1", `ring-cable/small/${second}`]);
  });
});
