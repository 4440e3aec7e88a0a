import { describe } from "vitest";
import { ownCircuit } from "../../../shared/rules/own-circuit.ts";
import { load, ring, table } from "./table.ts";

const is = (id: string, appliance: string, more: object = {}) => ({ [id]: { appliance, ...more } }) as never;
const cooker = ["way-1.a control-1.a 6", "control-1.c cooker-1.a 6"];
const heater = ["way-1.a isolator-1.a", "isolator-1.c heater-1.a", "way-1.b socket-1.a"];
const kitchen = { ...(is("hob-1", "hob") as object), ...(is("oven-1", "oven") as object) };

// On-Site Guide Appendix H: over 15 l and showers alone (15 l seen in a secondary copy); cooking above 2 kW from memory;
// a water heater of unstated litres counts above 2 kW: common practice, no source.
describe("a circuit of its own", () => {
  table(ownCircuit, [
    {
      title: "is what a cooker has alone",
      lines: cooker,
      extras: { settings: is("cooker-1", "cooker") },
      gives: [],
    },
    {
      title: "may have a socket outlet in the cooker control",
      lines: cooker,
      extras: {
        settings: { ...(is("cooker-1", "cooker") as object), "control-1": { hasSocketOutlet: true } },
      },
      gives: [],
    },
    {
      title: "may not have a socket outlet beside the control",
      lines: [...cooker, "control-1.b socket-1.a 6"],
      extras: { settings: is("cooker-1", "cooker") },
      gives: ["fix cooking cooker-1"],
    },
    {
      title: "may not have lights behind a fuse",
      lines: [...cooker, "control-1.b fcu-1.a 6", "fcu-1.c lamp-1.a 1"],
      extras: { settings: is("cooker-1", "cooker") },
      gives: ["fix cooking cooker-1"],
    },
    {
      title: "is not spoilt by a connection unit that feeds nothing",
      lines: [...cooker, "control-1.b fcu-1.a 6"],
      extras: { settings: is("cooker-1", "cooker") },
      gives: [],
    },
    {
      title: "may be for a hob and an oven on one control",
      lines: ["way-1.a control-1.a 6", "control-1.c hob-1.a 6", "control-1.d oven-1.a 6"],
      extras: { settings: kitchen },
      gives: [],
    },
    {
      title: "is not for a hob and an oven on two controls",
      lines: [
        "way-1.a control-1.a 6",
        "control-1.c hob-1.a 6",
        "way-1.b control-2.a 6",
        "control-2.c oven-1.a 6",
      ],
      extras: { settings: kitchen },
      gives: ["fix cooking hob-1", "fix cooking oven-1"],
    },
    {
      title: "is not asked for a cooking appliance of 2 kW",
      lines: ["way-1.a oven-1.a", "way-1.b socket-1.a"],
      extras: { settings: is("oven-1", "oven"), loads: [load("oven-1", 2000)] },
      gives: [],
    },
    {
      title: "is for a water heater of 120 l",
      lines: heater,
      extras: { settings: is("heater-1", "water-heater", { litres: 120 }) },
      gives: ["fix water-heater heater-1"],
    },
    {
      title: "is not asked for one of 15 l",
      lines: heater,
      extras: { settings: is("heater-1", "water-heater", { litres: 15 }) },
      gives: [],
    },
    {
      title: "is for one of 3 kW whose litres nobody has said",
      lines: heater,
      extras: { settings: is("heater-1", "water-heater"), loads: [load("heater-1", 3000)] },
      gives: ["fix water-heater heater-1"],
    },
    {
      title: "is not asked for one of 2 kW whose litres nobody has said",
      lines: heater,
      extras: { settings: is("heater-1", "water-heater"), loads: [load("heater-1", 2000)] },
      gives: [],
    },
    {
      title: "is for a shower",
      lines: ["way-1.a shower-1.a 10", "way-1.b socket-1.a"],
      extras: { settings: is("shower-1", "shower") },
      gives: ["fix shower shower-1"],
    },
    {
      title: "is for a shower on a ring too",
      lines: [...ring, "socket-1.c shower-1.a"],
      extras: { settings: is("shower-1", "shower") },
      gives: ["fix shower shower-1"],
    },
    {
      title: "is not said of a water heater on a ring, where another rule speaks",
      lines: [...ring, "socket-1.c heater-1.a"],
      extras: { settings: is("heater-1", "water-heater", { litres: 120 }) },
      gives: [],
    },
    {
      title: "is not asked for a boiler",
      lines: ["way-1.a boiler-1.a", "way-1.b socket-1.a"],
      extras: { settings: is("boiler-1", "boiler") },
      gives: [],
    },
    {
      title: "cannot be told while neither litres nor load are said",
      lines: heater,
      extras: { settings: is("heater-1", "water-heater") },
      gives: ["missing powerW heater-1"],
    },
    {
      title: "cannot be told on a ring of what may be a shower",
      lines: [...ring, "socket-1.c heater-1.a"],
      gives: ["missing appliance heater-1"],
    },
    {
      title: "cannot be told while the kind of appliance is not said",
      lines: heater,
      gives: ["missing appliance heater-1"],
    },
  ]);
});
