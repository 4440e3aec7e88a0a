import { describe } from "vitest";
import { cookerControl } from "../../../shared/rules/cooker-control.ts";
import { load, table } from "./table.ts";

const control = (more: object = {}) => ({ "control-1": more, "cooker-1": { appliance: "cooker" } }) as never;
const through = (words = "6 1m") => ["way-1.a control-1.a 6 10m", `control-1.c cooker-1.a ${words}`];

// On-Site Guide Appendix H: a control within 2 m of the appliance (a secondary copy); two by one: 15th edition, 476-20.
describe("the control of a cooker", () => {
  table(cookerControl, [
    {
      title: "may stand 2 m away",
      lines: through(),
      extras: { settings: control({ distanceToApplianceM: 2 }) },
      gives: [],
    },
    {
      title: "is too far at 2.5 m",
      lines: through(),
      extras: { settings: control({ distanceToApplianceM: 2.5 }) },
      gives: ["fix far control-1"],
    },
    {
      title: "must be there",
      lines: ["way-1.a cooker-1.a 6"],
      extras: { settings: control() },
      gives: ["fix none cooker-1"],
    },
    {
      title: "cannot be told before it is said what the appliance is",
      lines: ["way-1.a cooker-1.a 6"],
      gives: ["missing appliance cooker-1"],
    },
    {
      title: "must stand before the appliance, not beside it",
      lines: ["way-1.a cooker-1.a 6", "way-1.b control-1.a 6"],
      extras: { settings: control() },
      gives: ["fix none cooker-1"],
    },
    {
      title: "is near enough where the cable between is 2 m",
      lines: through("6 2m"),
      extras: { settings: control() },
      gives: [],
    },
    {
      title: "is as far as the cable between where nobody has said",
      lines: through("6 5m"),
      extras: { settings: control() },
      gives: ["fix far control-1"],
    },
    {
      title: "may be nearer than its cable is long, where it is said",
      lines: through("6 5m"),
      extras: { settings: control({ distanceToApplianceM: 1 }) },
      gives: [],
    },
    {
      title: "may be a double-pole switch that says how far it is",
      lines: ["way-1.a isolator-1.a 6", "isolator-1.c cooker-1.a 6 3m"],
      extras: {
        settings: { "isolator-1": { distanceToApplianceM: 1.5 }, "cooker-1": { appliance: "cooker" } },
      },
      gives: [],
    },
    {
      title: "that is a double-pole switch is too far at more than 2 m of cable",
      lines: ["way-1.a isolator-1.a 6", "isolator-1.c cooker-1.a 6 3m"],
      extras: { settings: control() },
      gives: ["fix far isolator-1"],
    },
    {
      title: "is as far as the route through a box between",
      lines: ["way-1.a isolator-1.a 6", "isolator-1.c box-1.a 6 1.5m", "box-1.b cooker-1.a 6 1m"],
      extras: { settings: control() },
      gives: ["fix far isolator-1"],
    },
    {
      title: "is near enough where the route through a box is 2 m",
      lines: ["way-1.a isolator-1.a 6", "isolator-1.c box-1.a 6 1m", "box-1.b cooker-1.a 6 1m"],
      extras: { settings: control() },
      gives: [],
    },
    {
      title: "may be a double-pole switch",
      lines: ["way-1.a isolator-1.a 6", "isolator-1.c cooker-1.a 6 1m"],
      extras: { settings: control() },
      gives: [],
    },
    {
      title: "may serve a hob and an oven",
      lines: [...through(), "control-1.d oven-1.a 6 1m"],
      extras: {
        settings: {
          "control-1": { distanceToApplianceM: 1 },
          "cooker-1": { appliance: "hob" },
          "oven-1": { appliance: "oven" },
        },
      },
      gives: [],
    },
    {
      title: "need not be there for a cooking appliance of 2 kW",
      lines: ["way-1.a oven-1.a"],
      extras: { settings: { "oven-1": { appliance: "oven" } }, loads: [load("oven-1", 2000)] },
      gives: [],
    },
    {
      title: "must be there for one of 2.1 kW",
      lines: ["way-1.a oven-1.a"],
      extras: { settings: { "oven-1": { appliance: "oven" } }, loads: [load("oven-1", 2100)] },
      gives: ["fix none oven-1"],
    },
    {
      title: "is not asked for a water heater",
      lines: ["way-1.a heater-1.a"],
      extras: { settings: { "heater-1": { appliance: "water-heater" } } },
      gives: [],
    },
  ]);
});
