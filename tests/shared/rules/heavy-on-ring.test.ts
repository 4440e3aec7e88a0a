import { describe } from "vitest";
import { heavyOnRing } from "../../../shared/rules/heavy-on-ring.ts";
import { load, ring, table } from "./table.ts";

const off = (point: string, at = 1) => `socket-${at}.c ${point}-1.a`;
const heaterIs = (appliance: string, more: object = {}) => ({
  settings: { "heater-1": { appliance, ...more } } as never,
});

// On-Site Guide Appendix H: no immersion heaters, comprehensive space heating or cooking over 2 kW on a ring (from memory).
describe("a ring is not meant for", () => {
  table(heavyOnRing, [
    {
      title: "a water heater of 120 l",
      lines: [...ring, off("heater")],
      extras: heaterIs("water-heater", { litres: 120 }),
      gives: ["query water-heater heater-1"],
    },
    {
      title: "one behind a connection unit either",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c heater-1.a"],
      extras: heaterIs("water-heater", { litres: 120 }),
      gives: ["query water-heater heater-1"],
    },
    {
      title: "a cooker",
      lines: [...ring, off("cooker")],
      extras: { settings: { "cooker-1": { appliance: "cooker" } } },
      gives: ["query cooking cooker-1"],
    },
    {
      title: "a storage heater",
      lines: [...ring, off("heater")],
      extras: heaterIs("storage-heater"),
      gives: ["query space-heating heater-1"],
    },
    {
      title: "two heaters",
      lines: [...ring, off("heater"), "socket-2.c heater-2.a"],
      extras: {
        settings: { "heater-1": { appliance: "space-heater" }, "heater-2": { appliance: "space-heater" } },
        loads: [load("heater-1", 2000), load("heater-2", 1500)],
      },
      gives: ["query space-heating heater-1"],
    },
    {
      title: "but one heater may be on it",
      lines: [...ring, off("heater")],
      extras: heaterIs("space-heater"),
      gives: [],
    },
    {
      title: "but a water heater of 10 l may be on it",
      lines: [...ring, off("heater")],
      extras: heaterIs("water-heater", { litres: 10 }),
      gives: [],
    },
    {
      title: "but an oven of 2 kW may be on it",
      lines: [...ring, off("oven")],
      extras: { settings: { "oven-1": { appliance: "oven" } }, loads: [load("oven-1", 2000)] },
      gives: [],
    },
    {
      title: "but a shower has a rule of its own",
      lines: [...ring, off("shower")],
      extras: { settings: { "shower-1": { appliance: "shower" } } },
      gives: [],
    },
    {
      title: "but a radial is another matter",
      lines: ["way-1.a socket-1.a", off("heater")],
      extras: heaterIs("water-heater", { litres: 120 }),
      gives: [],
    },
    {
      title: "nobody can tell of a water heater without litres and load",
      lines: [...ring, off("heater")],
      extras: heaterIs("water-heater"),
      gives: ["missing powerW heater-1"],
    },
  ]);
});
