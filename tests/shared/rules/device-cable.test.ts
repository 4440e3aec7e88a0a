import { describe } from "vitest";
import { deviceCable } from "../../../shared/rules/device-cable.ts";
import { ring, table } from "./table.ts";

const device = (deviceRatingA: number, more: object = {}) => ({
  settings: { "way-1": { deviceRatingA, ...more } },
});
const cooker = (words: string) => [`way-1.a control-1.a ${words}`, "control-1.c cooker-1.a 6"];
const first = "control-1.a~way-1.a";

// BS 7671 433.1.1: In <= Iz. Table 4D5: 1.0 mm² C 16 A, 101 10.5 A, 103 8 A; 6 mm² C 47 A, 100 34 A (from memory).
describe("each cable of a circuit without socket outlets", () => {
  table(deviceCable, [
    { title: "in 6 mm² to a cooker passes on 32 A", lines: cooker("6"), extras: device(32), gives: [] },
    {
      title: "in 2.5 mm² to a cooker fails on 32 A",
      lines: cooker("2.5"),
      extras: device(32),
      gives: [`fix underrated ${first}`],
    },
    {
      title: "of 34 A in insulation fails on 40 A",
      lines: cooker("6 method-100"),
      extras: device(40),
      gives: [`fix underrated ${first}`],
    },
    {
      title: "in 1.0 mm² to lights passes on 6 A even at 8 A",
      lines: ["way-1.a rose-1.a 1 method-103"],
      extras: device(6),
      gives: [],
    },
    {
      title: "in 1.0 mm² at 8 A to lights fails on 10 A",
      lines: ["way-1.a rose-1.a 1 method-103"],
      extras: device(10),
      gives: ["fix underrated rose-1.a~way-1.a"],
    },
    {
      title: "is judged down to the switch",
      lines: ["way-1.a rose-1.a 1", "rose-1.s switch-1.s 1 method-103"],
      extras: device(10),
      gives: ["fix underrated rose-1.s~switch-1.s"],
    },
    {
      title: "is judged round a loop of lights as anywhere",
      lines: ["way-1.a lamp-1.a 1", "lamp-1.b lamp-2.a 1 method-103", "lamp-2.b way-1.b 1"],
      extras: device(10),
      gives: ["fix underrated lamp-1.b~lamp-2.a"],
    },
    {
      title: "of 47 A fails on a 40 A rewireable fuse",
      lines: ["way-1.a shower-1.a 6"],
      extras: device(40, { deviceStandard: "BS 3036" }),
      gives: ["fix semi-enclosed shower-1.a~way-1.a"],
    },
    {
      title: "must be sized",
      lines: ["way-1.a rose-1.a ?"],
      extras: device(6),
      gives: ["missing csaMm2 rose-1.a~way-1.a"],
    },
    {
      title: "must have a known device",
      lines: ["way-1.a rose-1.a 1"],
      extras: device(undefined as never),
      gives: ["missing deviceRatingA way-1"],
    },
    {
      title: "is the radial rule's matter where a socket outlet is",
      lines: ["way-1.a socket-1.a 2.5"],
      extras: device(40),
      gives: [],
    },
    { title: "is the ring rules' matter on a ring", lines: ring, extras: device(32), gives: [] },
    {
      title: "is the fuse's matter behind one",
      lines: ["way-1.a fcu-1.a 6", "fcu-1.c lamp-1.a 1 method-103"],
      extras: device(32),
      gives: [],
    },
    {
      title: "that is a lone protective conductor carries no load",
      lines: ["way-1.a rose-1.a 1", "way-1.b rose-1.b 1 method-103 E:E"],
      extras: device(10),
      gives: [],
    },
  ]);
});
