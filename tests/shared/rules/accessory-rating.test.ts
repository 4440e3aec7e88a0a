import { describe } from "vitest";
import { accessoryRating } from "../../../shared/rules/accessory-rating.ts";
import { load, ring, table } from "./table.ts";

const set = (id: string, ratingA: number | undefined, deviceRatingA: number | undefined = 32) =>
  ({ settings: { [id]: { ratingA }, "way-1": { deviceRatingA } } }) as never;
const heater = ["way-1.a isolator-1.a", "isolator-1.c heater-1.a"];
const boxed = [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a"];
const lit = ["way-1.a rose-1.a 1.5", "rose-1.s switch-1.s 1"];

// Usual ratings (product standards, from memory): plate switch 10 A, control 45 A, box 32 A, 20 A for lighting.
describe("the rating of a switch, isolator, control or box", () => {
  table(accessoryRating, [
    {
      title: "of 20 A is enough for an isolator on 16 A",
      lines: heater,
      extras: set("isolator-1", 20, 16),
      gives: [],
    },
    {
      title: "of 16 A is not enough for an isolator on 20 A",
      lines: heater,
      extras: set("isolator-1", 16, 20),
      gives: ["fix underrated isolator-1"],
    },
    {
      title: "must be said of an isolator",
      lines: heater,
      extras: set("isolator-1", undefined, 16),
      gives: ["missing ratingA isolator-1"],
    },
    {
      title: "is 45 A for a control that does not say",
      lines: ["way-1.a control-1.a 6", "control-1.c cooker-1.a 6"],
      extras: set("control-1", undefined, 45),
      gives: [],
    },
    {
      title: "must be said of a control on 50 A",
      lines: ["way-1.a control-1.a 10", "control-1.c cooker-1.a 10"],
      extras: set("control-1", undefined, 50),
      gives: ["missing ratingA control-1"],
    },
    {
      title: "of 20 A is not enough for a box on the ring",
      lines: ["way-1.a socket-1.a", "socket-1.b box-1.a", "box-1.b way-1.b"],
      extras: set("box-1", 20),
      gives: ["fix underrated box-1"],
    },
    {
      title: "of 20 A is enough for a box before one twin",
      lines: boxed,
      extras: set("box-1", 20),
      gives: [],
    },
    {
      title: "of 16 A is not enough for a box before one twin",
      lines: boxed,
      extras: set("box-1", 16),
      gives: ["fix underrated box-1"],
    },
    {
      title: "is 32 A for a box that does not say",
      lines: boxed,
      extras: set("box-1", undefined),
      gives: [],
    },
    {
      title: "of an isolator behind a 13 A fuse need be no more",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c isolator-1.a", "isolator-1.c heater-1.a"],
      extras: set("isolator-1", 13),
      gives: [],
    },
    {
      title: "of a plate switch must carry the lights it works",
      lines: lit,
      extras: { ...(set("switch-1", 6, 16) as object), loads: [load("rose-1", 1500)] },
      gives: ["fix underrated switch-1"],
    },
    {
      title: "of a plate switch is 10 A where it does not say",
      lines: lit,
      extras: { ...(set("switch-1", undefined, 16) as object), loads: [load("rose-1", 1500)] },
      gives: [],
    },
    {
      title: "cannot be told while the device is not known",
      lines: heater,
      extras: { settings: { "isolator-1": { ratingA: 20 }, "way-1": { deviceRatingA: undefined } } },
      gives: ["missing deviceRatingA way-1"],
    },
    { title: "of what nothing feeds is no matter", lines: ["isolator-1.c heater-1.a"], gives: [] },
  ]);
});
