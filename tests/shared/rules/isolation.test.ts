import { describe, expect, it } from "vitest";
import { isolation } from "../../../shared/rules/isolation.ts";
import { ring, type Row } from "./table.ts";
import { said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const is = (appliance: string, more: object = {}) => ({ "boiler-1": { appliance }, ...more }) as never;
const fused = [...ring, "socket-1.c fcu-1.a", "fcu-1.c boiler-1.a 1.5"];

// BS 7671 462 and 537: means of isolation for every item of fixed equipment (from memory).
describe("a fixed appliance", () => {
  const rows: Row[] = [
    {
      title: "is isolated by a switched connection unit",
      lines: fused,
      extras: { settings: is("boiler", { "fcu-1": { switched: true } }) },
      gives: [],
    },
    {
      title: "that is a boiler may be isolated by the fuse of an unswitched unit, if justified",
      lines: fused,
      extras: { settings: is("boiler", { "fcu-1": { switched: false } }) },
      gives: ["query fuse-only boiler-1"],
    },
    {
      title: "that is a boiler on a unit nobody called switched is taken as on an unswitched one",
      lines: fused,
      extras: { settings: is("boiler") },
      gives: ["query fuse-only boiler-1"],
    },
    {
      title: "on an unswitched unit cannot be judged before it is said what it is",
      lines: fused,
      gives: ["missing appliance boiler-1"],
    },
    {
      title: "other than a boiler is not isolated by a fuse",
      lines: fused,
      extras: { settings: is("extractor-fan") },
      gives: ["fix none boiler-1"],
    },
    {
      title: "is isolated by a double-pole switch",
      lines: ["way-1.a isolator-1.a", "isolator-1.c boiler-1.a"],
      extras: { settings: is("water-heater") },
      gives: [],
    },
    {
      title: "is isolated by a double-pole switch fed at its load side",
      lines: ["way-1.a isolator-1.c", "isolator-1.a boiler-1.a"],
      extras: { settings: is("water-heater") },
      gives: [],
    },
    {
      title: "is isolated by its cooker control",
      lines: ["way-1.a control-1.a 6", "control-1.c cooker-1.a 6"],
      gives: [],
    },
    {
      title: "straight off a way is not isolated",
      lines: ["way-1.a boiler-1.a"],
      extras: { settings: is("boiler") },
      gives: ["fix none boiler-1"],
    },
    {
      title: "is not isolated where its neutral goes round the switch",
      lines: [
        "way-1.a isolator-1.a",
        "isolator-1.c box-1.a L:L E:E",
        "way-1.b box-1.b N:N",
        "box-1.c boiler-1.a",
      ],
      extras: { settings: is("water-heater") },
      gives: ["fix none boiler-1"],
    },
    {
      title: "is isolated by an under-rated switch, which another rule names",
      lines: ["way-1.a isolator-1.a", "isolator-1.c boiler-1.a"],
      extras: { settings: is("water-heater", { "isolator-1": { ratingA: 6 } }) },
      gives: [],
    },
    {
      title: "that nothing feeds is no matter",
      lines: ["isolator-1.c boiler-1.a"],
      extras: { settings: is("water-heater") },
      gives: [],
    },
  ];
  it.each(rows)("$title", ({ lines, extras, gives }) => {
    expect(said(isolation, wire(lines, extras ?? {}))).toEqual(gives);
  });
});
