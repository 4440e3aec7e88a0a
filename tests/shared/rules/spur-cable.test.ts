import { describe } from "vitest";
import { spurCable } from "../../../shared/rules/spur-cable.ts";
import { load, ring, table } from "./table.ts";

const spur = (words = "") => [...ring, `socket-1.c socket-4.a ${words}`.trim()];
const cable = "socket-1.c~socket-4.a";
const single = { settings: { "socket-4": { gangs: 1 as const } } };
const radial = (words: string) => [
  "way-1.a socket-1.a 4",
  "socket-1.b socket-2.a 4",
  `socket-1.c socket-4.a ${words}`,
];
const on20 = { settings: { "way-1": { deviceRatingA: 20 } } };
const cooking = { loads: [load("cooker-1", 9200)] };

// BS 7671 433.1.204 (unfused spurs in 2.5 mm² like the ring) and Appendix 15; worst cases of BS 1363-2: single
// 13 A, twin 20 A (from memory); Table 4D5: 2.5 mm² 17 A by method 101, 13.5 A by 103; 4 mm² 17.5 A by 103.
describe("the cable of an unfused spur", () => {
  table(spurCable, [
    { title: "passes in 2.5 mm² to a twin", lines: spur(), gives: [] },
    {
      title: "is too small in 1.5 mm² on 32 A though it ends in a doubled cable",
      lines: [...ring, "socket-1.c box-1.a 1.5", "box-1.b socket-4.a 1.5", "box-1.c socket-4.b 1.5"],
      extras: single,
      gives: ["fix small box-1.a~socket-1.c"],
    },
    {
      title: "is too small in 1.5 mm² on 32 A",
      lines: spur("1.5"),
      extras: single,
      gives: [`fix small ${cable}`],
    },
    {
      title: "fails where it carries 17 A and a twin takes 20 A",
      lines: spur("method-101"),
      gives: [`fix overload ${cable}`],
    },
    {
      title: "is queried where it carries 17 A to a single of 13 A",
      lines: spur("method-101"),
      extras: single,
      gives: [`query slim ${cable}`],
    },
    {
      title: "is queried at 13.5 A to a single of 13 A",
      lines: spur("method-103"),
      extras: single,
      gives: [`query slim ${cable}`],
    },
    {
      title: "is queried at 13.5 A to a connection unit on 13 A",
      lines: [...ring, "socket-1.c fcu-1.a method-103"],
      gives: ["query slim fcu-1.a~socket-1.c"],
    },
    {
      // 433.1.202: 1.5 mm² by method 100 carries 16 A, behind a 15 A rewireable fuse 11.6 A.
      title: "fails where a rewireable fuse of less than Iz does not protect it from a twin of 20 A",
      lines: ["way-1.a socket-1.a 2.5", "socket-1.b socket-2.a 2.5", "socket-1.c socket-4.a 1.5 method-100"],
      extras: { settings: { "way-1": { deviceStandard: "BS 3036" as const, deviceRatingA: 15 } } },
      gives: [`fix overload ${cable}`],
    },
    {
      title: "cannot be told there without the kind of device",
      lines: ["way-1.a socket-1.a 2.5", "socket-1.b socket-2.a 2.5", "socket-1.c socket-4.a 1.5 method-100"],
      extras: { settings: { "way-1": { deviceStandard: undefined, deviceRatingA: 15 } } },
      gives: ["missing deviceStandard way-1"],
    },
    { title: "passes at just 20 A by method A", lines: spur("method-A"), gives: [] },
    {
      title: "fails in 4 mm² where that carries 17.5 A",
      lines: spur("4 method-103"),
      gives: [`fix overload ${cable}`],
    },
    {
      title: "is held against one point, for two are another rule's matter",
      lines: [...spur(), "socket-4.b socket-5.a"],
      gives: [],
    },
    {
      title: "is judged up to and beyond a box in it",
      lines: [...ring, "socket-1.c box-1.a method-101", "box-1.b socket-4.a 1.5"],
      gives: ["fix overload box-1.a~socket-1.c", "fix small box-1.b~socket-4.a"],
    },
    { title: "without a point on it is not judged", lines: [...ring, "socket-1.c box-1.a 1.5"], gives: [] },
    { title: "may be 2.5 mm² on a 32 A radial in 4 mm²", lines: radial("2.5"), gives: [] },
    { title: "may not be 1.5 mm² on a 32 A radial", lines: radial("1.5"), gives: [`fix small ${cable}`] },
    {
      title: "may carry 17 A to a single on a 20 A radial",
      lines: radial("method-101"),
      extras: { settings: { ...on20.settings, ...single.settings } },
      gives: [],
    },
    {
      title: "fails at 17 A to a twin on a 20 A radial",
      lines: radial("method-101"),
      extras: on20,
      gives: [`fix overload ${cable}`],
    },
    {
      title: "need carry no more than the device, 16 A, to a twin",
      lines: radial("1.5 method-100"),
      extras: { settings: { "way-1": { deviceRatingA: 16 } } },
      gives: [],
    },
    {
      title: "of full rating to several points is another rule's matter",
      lines: [...ring, "socket-1.c socket-4.a 4", "socket-4.b socket-5.a 4"],
      gives: [],
    },
    {
      title: "further out on such a branch is judged as off a radial",
      lines: [...ring, "socket-1.c socket-4.a 4", "socket-4.b socket-5.a 4", "socket-5.b socket-6.a 1.5"],
      gives: ["fix small socket-5.b~socket-6.a"],
    },
    {
      title: "to an appliance is held against its stated load",
      lines: [...ring, "socket-1.c cooker-1.a"],
      extras: { loads: [load("cooker-1", 7000)] },
      gives: ["fix overload cooker-1.a~socket-1.c"],
    },
    {
      title: "to an appliance without stated load is not known",
      lines: [...ring, "socket-1.c cooker-1.a"],
      gives: ["missing powerW cooker-1"],
    },
    {
      title: "to an appliance without stated load passes where the device protects it",
      lines: [...ring, "socket-1.c cooker-1.a 4"],
      gives: [],
    },
    { title: "must be sized", lines: spur("?"), gives: [`missing csaMm2 ${cable}`] },
    {
      title: "to a socket outlet nobody called single or twin is not known",
      lines: spur("method-101"),
      extras: { settings: { "socket-4": { gangs: undefined } } },
      gives: ["missing gangs socket-4"],
    },
    {
      title: "behind an unknown device is not known",
      lines: spur(),
      extras: { settings: { "way-1": { deviceRatingA: undefined } } },
      gives: ["missing deviceRatingA way-1"],
    },
    {
      title: "of 37 A to 40 A of cooking passes behind a 30 A circuit-breaker, which acts first",
      lines: [...ring, "socket-1.c cooker-1.a 4"],
      extras: { ...cooking, settings: { "way-1": { deviceRatingA: 30 } } },
      gives: [],
    },
    {
      // BS 7671 433.1.202: a rewireable fuse of 30 A protects cable from 30 / 0.725 = 41.4 A up.
      title: "of 37 A to 40 A of cooking fails behind a 30 A rewireable fuse, which acts late",
      lines: [...ring, "socket-1.c cooker-1.a 4"],
      extras: { ...cooking, settings: { "way-1": { deviceRatingA: 30, deviceStandard: "BS 3036" } } },
      gives: ["fix overload cooker-1.a~socket-1.c"],
    },
    {
      title: "of 37 A to 40 A of cooking is not known where the kind of device is not said",
      lines: [...ring, "socket-1.c cooker-1.a 4"],
      extras: {
        ...cooking,
        settings: { "way-1": { deviceRatingA: 30, deviceStandard: undefined } },
      },
      gives: ["missing deviceStandard way-1"],
    },
  ]);
});
