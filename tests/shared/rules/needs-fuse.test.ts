import { describe, expect, it } from "vitest";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { needsFuse } from "../../../shared/rules/needs-fuse.ts";
import { load, ring, table } from "./table.ts";
import { wire } from "./wire.ts";

const appliance = (kind: string, more: object = {}) => ({ appliance: kind, ...more }) as never;
const radial = ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4"];
const device = (deviceRatingA: number | undefined) => ({ "way-1": { deviceRatingA } as never });

// On-Site Guide Appendix H: permanently connected equipment on a socket-outlet circuit is fused locally, to 13 A, or
// protected by a device of 16 A at most.
describe("lights and fixed appliances straight off a socket-outlet circuit", () => {
  table(needsFuse, [
    {
      title: "need a fuse on a ring: a light",
      lines: [...ring, "socket-1.c lamp-1.a"],
      gives: ["fix lighting lamp-1"],
    },
    {
      title: "need a fuse on a ring: a boiler",
      lines: [...ring, "socket-1.c boiler-1.a"],
      extras: { settings: { "boiler-1": appliance("boiler") } },
      gives: ["fix appliance boiler-1"],
    },
    {
      title: "need another circuit where no fuse of a connection unit carries them: a cooker of 9 kW",
      lines: [...ring, "socket-1.c cooker-1.a 6"],
      extras: { settings: { "cooker-1": appliance("cooker") }, loads: [load("cooker-1", 9000)] },
      gives: ["fix over-fuse cooker-1"],
    },
    {
      title: "need a fuse where an appliance sold as 3 kW counts as the 13 A of one",
      lines: [...ring, "socket-1.c heater-1.a"],
      extras: { settings: { "heater-1": appliance("water-heater") }, loads: [load("heater-1", 3000)] },
      gives: ["fix appliance heater-1"],
    },
    {
      title: "need a fuse where the light is looped into the ring",
      lines: ["way-1.a socket-1.a", "socket-1.b lamp-1.a", "lamp-1.b way-1.b"],
      gives: ["fix lighting lamp-1"],
    },
    {
      title: "need a fuse on a 20 A radial",
      lines: [...radial, "socket-2.b fan-1.a 4"],
      extras: { settings: { ...device(20), "fan-1": appliance("extractor-fan") } },
      gives: ["fix appliance fan-1"],
    },
    {
      title: "need none on a 16 A radial",
      lines: [...radial, "socket-2.b lamp-1.a 4"],
      extras: { settings: device(16) },
      gives: [],
    },
    {
      title: "need none behind a connection unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a 1"],
      gives: [],
    },
    { title: "need none of this rule on a lighting circuit", lines: ["way-1.a lamp-1.a"], gives: [] },
    {
      title: "are one finding where they hang on one branch",
      lines: [...ring, "socket-1.c lamp-1.a", "lamp-1.b lamp-2.a"],
      gives: ["fix lighting lamp-1"],
    },
    {
      title: "are two findings on two branches",
      lines: [...ring, "socket-1.c lamp-1.a", "socket-2.c lamp-2.a"],
      gives: ["fix lighting lamp-1", "fix lighting lamp-2"],
    },
    {
      title: "on a radial want a circuit of their own: a cooker",
      lines: [...radial, "socket-2.b cooker-1.a 4"],
      extras: { settings: { "cooker-1": appliance("cooker") }, loads: [load("cooker-1", 7000)] },
      gives: [],
    },
    {
      title: "on a ring need a fuse: a water heater",
      lines: [...ring, "socket-1.c heater-1.a"],
      extras: { settings: { "heater-1": appliance("water-heater", { litres: 120 }) } },
      gives: ["fix appliance heater-1"],
    },
    {
      title: "want a circuit of their own everywhere: a shower",
      lines: [...ring, "socket-1.c shower-1.a"],
      extras: { settings: { "shower-1": appliance("shower") } },
      gives: [],
    },
    {
      title: "on a radial need a fuse: a water heater of 10 l",
      lines: [...radial, "socket-2.b heater-1.a 4"],
      extras: { settings: { "heater-1": appliance("water-heater", { litres: 10 }) } },
      gives: ["fix appliance heater-1"],
    },
    {
      title: "cannot be told on a radial while it is not said what they are",
      lines: [...radial, "socket-2.b heater-1.a 4"],
      gives: ["missing appliance heater-1"],
    },
    {
      title: "cannot be told while the device is not known",
      lines: [...radial, "socket-2.b lamp-1.a 4"],
      extras: { settings: device(undefined) },
      gives: ["missing deviceRatingA way-1"],
    },
  ]);

  it("take their own cable, box and switch with them, for behind a fuse those are judged anew", () => {
    const lines = [
      ...ring,
      "socket-1.c box-1.a 1",
      "box-1.t lamp-1.a 1",
      "box-1.s switch-1.s 1",
      "box-1.b rose-1.a 1",
    ];
    const [found] = needsFuse.check(buildModel(wire(lines)));
    const causes = found?.kind === "evidence" ? found.causes.map(({ id }) => id) : [];
    expect(causes.toSorted()).toEqual(
      expect.arrayContaining([
        "box-1",
        "box-1.a~socket-1.c",
        "box-1.b~rose-1.a",
        "box-1.s~switch-1.s",
        "rose-1",
        "switch-1",
      ]),
    );
    expect(causes).not.toContain("socket-1");
    expect(causes).not.toContain(ring[0]);
  });
});
