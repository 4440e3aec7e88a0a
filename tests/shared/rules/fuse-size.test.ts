import { describe } from "vitest";
import { fuseSize } from "../../../shared/rules/fuse-size.ts";
import { ring, table } from "./table.ts";

const unit = (fuseRatingA: number | undefined) => ({ "fcu-1": { fuseRatingA } as never });
const to = (point: string) => [...ring, "socket-1.c fcu-1.a", `fcu-1.c ${point}`];

// BS 1363-4: 13 A at most. 3 A for boiler controls and lighting, 5 A at most for lighting: common practice, no source.
describe("the fuse of a connection unit", () => {
  table(fuseSize, [
    {
      title: "may be 13 A to socket outlets",
      lines: to("socket-4.a"),
      extras: { settings: unit(13) },
      gives: [],
    },
    {
      title: "may not be 20 A",
      lines: to("socket-4.a"),
      extras: { settings: unit(20) },
      gives: ["fix over-unit fcu-1"],
    },
    {
      title: "of 13 A cannot be told to be right where nobody has said what it feeds",
      lines: to("boiler-1.a"),
      extras: { settings: unit(13) },
      gives: ["missing appliance boiler-1"],
    },
    {
      title: "may be 3 A to a boiler",
      lines: to("boiler-1.a"),
      extras: { settings: { ...unit(3), "boiler-1": { appliance: "boiler" } } },
      gives: [],
    },
    {
      title: "may not be 13 A to a boiler",
      lines: to("boiler-1.a"),
      extras: { settings: { ...unit(13), "boiler-1": { appliance: "boiler" } } },
      gives: ["fix over-allowed fcu-1"],
    },
    {
      title: "may be 5 A to a boiler whose maker says so",
      lines: to("boiler-1.a"),
      extras: { settings: { ...unit(5), "boiler-1": { appliance: "boiler", makersFuseA: 5 } } },
      gives: [],
    },
    {
      title: "may not be above what the maker of a fan says",
      lines: to("fan-1.a"),
      extras: { settings: { ...unit(13), "fan-1": { appliance: "extractor-fan", makersFuseA: 3 } } },
      gives: ["fix over-allowed fcu-1"],
    },
    {
      title: "is held against the strictest of several",
      lines: [...to("fan-1.a"), "fcu-1.d fan-2.a"],
      extras: { settings: { ...unit(5), "fan-1": { makersFuseA: 5 }, "fan-2": { makersFuseA: 3 } } },
      gives: ["fix over-allowed fcu-1"],
    },
    { title: "may be 3 A to lights", lines: to("lamp-1.a 1"), extras: { settings: unit(3) }, gives: [] },
    { title: "may be 5 A to lights", lines: to("lamp-1.a 1"), extras: { settings: unit(5) }, gives: [] },
    {
      title: "is queried at 13 A to lights",
      lines: to("lamp-1.a 1"),
      extras: { settings: unit(13) },
      gives: ["query lighting fcu-1"],
    },
    {
      title: "is queried at 10 A to lights",
      lines: to("lamp-1.a 1"),
      extras: { settings: unit(10) },
      gives: ["query lighting fcu-1"],
    },
    {
      title: "may be 13 A before a second unit that has the lights",
      lines: [...to("socket-4.a"), "socket-4.b fcu-2.a", "fcu-2.c lamp-1.a 1"],
      extras: { settings: { "fcu-2": { fuseRatingA: 3 } } },
      gives: [],
    },
    {
      title: "must be known",
      lines: to("socket-4.a"),
      extras: { settings: unit(undefined) },
      gives: ["missing fuseRatingA fcu-1"],
    },
    {
      title: "of a unit that is not wired is no matter",
      lines: ring,
      extras: { also: ["fcu-1"], settings: unit(undefined) },
      gives: [],
    },
  ]);
});
