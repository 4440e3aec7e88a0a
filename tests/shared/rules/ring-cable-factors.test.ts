import { describe, expect, it } from "vitest";
import { ringCable } from "../../../shared/rules/ring-cable.ts";
import { said } from "./check-electrical.ts";
import { ring } from "./table.ts";
import { wire } from "./wire.ts";

const run = (route: object) => {
  const wiring = wire(ring);
  wiring.cables = wiring.cables.map((cable, at) => (at === 1 ? { ...cable, ...route } : cable));
  return said(ringCable, wiring);
};
const fails = ["fix underrated socket-1.b~socket-2.a"];

// Iz = It Ca Cg Ci for 2.5 mm² clipped direct, 27 A: BS 7671 Tables 4B1, 4C1, 52.2 (Ci at 50 mm from memory).
describe("a ring cable of 27 A keeps its 20 A", () => {
  it.each([
    { where: "at 45 °C (27 x 0.79 = 21.33 A)", route: { ambientC: 45 }, gives: [] },
    { where: "but not at 50 °C (27 x 0.71 = 19.17 A)", route: { ambientC: 50 }, gives: fails },
    { where: "beside one other circuit (27 x 0.80 = 21.6 A)", route: { groupedCircuits: 2 }, gives: [] },
    {
      where: "but not beside one other at 35 °C (27 x 0.80 x 0.94 = 20.3 A, then at 40 °C 18.8 A)",
      route: { groupedCircuits: 2, ambientC: 40 },
      gives: fails,
    },
    { where: "through 50 mm of insulation (27 x 0.88 = 23.8 A)", route: { insulationMm: 50 }, gives: [] },
    { where: "but not through 500 mm (27 x 0.50 = 13.5 A)", route: { insulationMm: 500 }, gives: fails },
  ])("$where", ({ route, gives }) => {
    expect(run(route)).toEqual(gives);
  });
});
