import { describe, expect, it } from "vitest";
import { radialCable } from "../../../shared/rules/radial-cable.ts";
import { factsOf } from "./check-electrical.ts";
import { load, ring, table } from "./table.ts";
import { wire } from "./wire.ts";

const device = (deviceRatingA: number, more: object = {}) => ({
  settings: { "way-1": { deviceRatingA, ...more } },
});
const chain = (words: string) => [`way-1.a socket-1.a ${words}`, `socket-1.b socket-2.a ${words}`];
const first = "socket-1.a~way-1.a";
const second = "socket-1.b~socket-2.a";
const main = ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4"];

// BS 7671 433.1.1: In <= Iz. Table 4D5: 2.5 mm² C 27 A, 101 17 A; 4 mm² C 37 A (from memory), 100 27 A.
describe("each cable of a radial for socket outlets", () => {
  table(radialCable, [
    { title: "in 4 mm² passes on 32 A", lines: chain("4"), extras: device(32), gives: [] },
    {
      title: "in 4 mm² at 27 A fails on 32 A",
      lines: chain("4 method-100"),
      extras: device(32),
      gives: [`fix underrated ${first}`, `fix underrated ${second}`],
    },
    {
      title: "in 2.5 mm² fails on 32 A",
      lines: ["way-1.a socket-1.a 2.5"],
      extras: device(32),
      gives: [`fix underrated ${first}`],
    },
    { title: "in 2.5 mm² passes on 20 A and on 25 A", lines: chain("2.5"), extras: device(25), gives: [] },
    {
      title: "at 17 A fails on 20 A",
      lines: ["way-1.a socket-1.a method-101"],
      extras: device(20),
      gives: [`fix underrated ${first}`],
    },
    { title: "at 17 A passes on 16 A", lines: chain("method-101"), extras: device(16), gives: [] },
    {
      title: "may branch as it likes where it carries the device",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b socket-2.a",
        "socket-1.c socket-3.a",
        "socket-3.b socket-4.a",
        "way-1.b socket-5.a",
      ],
      extras: device(20),
      gives: [],
    },
    {
      title: "is no spur where it is the only leg",
      lines: ["way-1.a socket-1.a 2.5", "socket-1.b socket-2.a 4"],
      extras: device(32),
      gives: [`fix underrated ${first}`],
    },
    {
      title: "may be 2.5 mm² to one point off 4 mm² on 32 A",
      lines: [...main, "socket-1.c socket-3.a 2.5"],
      extras: device(32),
      gives: [],
    },
    {
      title: "off such cable to two points is the matter of the rules on spurs",
      lines: [...main, "socket-1.c socket-3.a 2.5", "socket-3.b socket-4.a 2.5"],
      extras: device(32),
      gives: [],
    },
    {
      title: "is judged in a loop at the end of a leg",
      lines: [...main, "socket-2.b socket-3.a 2.5", "socket-3.b socket-4.a 4", "socket-4.b socket-2.c 4"],
      extras: device(32),
      gives: ["fix underrated socket-2.b~socket-3.a"],
    },
    {
      // BS 7671 433.1.202: 0.725 x 27 A = 19.6 A.
      title: "of 27 A fails on a 20 A rewireable fuse",
      lines: ["way-1.a socket-1.a"],
      extras: device(20, { deviceStandard: "BS 3036" }),
      gives: [`fix semi-enclosed ${first}`],
    },
    {
      title: "of 27 A passes on a 15 A rewireable fuse",
      lines: chain("2.5"),
      extras: device(15, { deviceStandard: "BS 3036" }),
      gives: [],
    },
    {
      title: "of 27 A on 20 A is not known while the kind of device is not said",
      lines: ["way-1.a socket-1.a"],
      extras: device(20, { deviceStandard: undefined }),
      gives: ["missing deviceStandard way-1"],
    },
    {
      title: "of 27 A on 16 A passes whatever the kind of device",
      lines: ["way-1.a socket-1.a"],
      extras: device(16, { deviceStandard: undefined }),
      gives: [],
    },
    {
      title: "may be a spur from the way beside a ring that is open",
      lines: [
        "way-1.a socket-1.a",
        "socket-1.b socket-2.a",
        "way-1.b socket-3.a",
        "socket-3.b socket-4.a",
        "way-1.c socket-5.a",
      ],
      extras: device(32),
      gives: [
        "fix underrated socket-1.a~way-1.a",
        "fix underrated socket-1.b~socket-2.a",
        "fix underrated socket-3.a~way-1.b",
        "fix underrated socket-3.b~socket-4.a",
      ],
    },
    {
      title: "is not known while the cable before it on its leg has no size",
      lines: ["way-1.a socket-1.a ?", "socket-1.b socket-2.a"],
      extras: device(32),
      gives: [`missing csaMm2 ${first}`, `missing csaMm2 ${first}`],
    },
    {
      title: "is not known while the leg beside it has no size: it may be a spur from that",
      lines: ["way-1.a socket-1.a", "way-1.b socket-2.a ?", "socket-2.b socket-3.a ?"],
      extras: device(32),
      gives: [
        "missing csaMm2 socket-2.a~way-1.b",
        "missing csaMm2 socket-2.a~way-1.b",
        "missing csaMm2 socket-2.b~socket-3.a",
      ],
    },
    {
      title: "that cannot carry the device fails whatever the size of what comes after it",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a ?"],
      extras: device(32),
      gives: [`fix underrated ${first}`, `missing csaMm2 ${second}`],
    },
    { title: "must be sized", lines: ["way-1.a socket-1.a ?"], gives: [`missing csaMm2 ${first}`] },
    {
      title: "must have a known device",
      lines: ["way-1.a socket-1.a"],
      extras: device(undefined as never),
      gives: ["missing deviceRatingA way-1"],
    },
    { title: "is not judged here on a ring", lines: ring, gives: [] },
    {
      title: "is not judged here behind a fuse",
      lines: ["way-1.a fcu-1.a 6", "fcu-1.c socket-1.a 1"],
      gives: [],
    },
    { title: "is not judged here where no socket outlet is", lines: ["way-1.a cooker-1.a"], gives: [] },
  ]);

  it("that fails is shown with the load of its circuit beside device and rating", () => {
    const wiring = wire(["way-1.a socket-1.a method-101"], {
      ...device(20),
      loads: [load("socket-1", 2300)],
    });
    // 2300 W / 230 V.
    expect(factsOf(radialCable, wiring)).toMatchObject({ designA: 10, deviceA: 20, ratingA: 17 });
  });
});
