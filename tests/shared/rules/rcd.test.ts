import { describe, expect, it } from "vitest";
import { rcd } from "../../../shared/rules/rcd.ts";
import { said } from "./check-electrical.ts";
import { ring, table } from "./table.ts";
import { wire } from "./wire.ts";

const way = (rcdMa: number | undefined, more: object = {}) =>
  ({ settings: { "way-1": { rcdMa, ...more }, "cooker-1": { appliance: "cooker" } } }) as never;
const tt = (rcdMa: number, more: object = {}) =>
  ({ ...(way(rcdMa, more) as object), supply: { earthing: "TT" } }) as never;
const cooker = ["way-1.a control-1.a 6", "control-1.c cooker-1.a 6"];
const set = (settings: object, more: object = {}) =>
  ({ settings: { "way-1": { rcdMa: 0 }, ...settings }, ...more }) as never;

// BS 7671 411.3.3, 411.3.4, 522.6.202, 522.6.203, 701.411.3.3 (the last from memory).
describe("a 30 mA RCD", () => {
  table(
    rcd,
    [
      { title: "covers a ring", lines: ring, extras: way(30), gives: [] },
      { title: "of 10 mA covers it too", lines: ring, extras: way(10), gives: [] },
      { title: "is taken as there where nothing is said", lines: ring, extras: way(undefined), gives: [] },
      {
        title: "is missing before socket outlets",
        lines: ring,
        extras: way(0),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is not replaced by one of 100 mA",
        lines: ring,
        extras: way(100),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is asked for socket outlets behind a fuse",
        lines: ["way-1.a fcu-1.a", "fcu-1.c socket-1.a"],
        extras: way(0),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is asked for the socket outlet of a cooker control",
        lines: cooker,
        extras: set({ "control-1": { hasSocketOutlet: true } }),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is asked on a 40 A device too: the outlets are 13 A ones",
        lines: ring,
        extras: way(0, { deviceRatingA: 40 }),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "cannot be told where nobody has said what an appliance is: it may be a shower",
        lines: cooker,
        extras: { settings: { "way-1": { rcdMa: 0 } } },
        gives: ["missing appliance cooker-1"],
      },
      { title: "is not asked for a cooker on the surface", lines: cooker, extras: way(0), gives: [] },
      {
        title: "is asked for lights",
        lines: ["way-1.a lamp-1.a"],
        extras: way(0),
        gives: ["fix lighting way-1"],
      },
      {
        title: "is asked for a shower",
        lines: ["way-1.a shower-1.a 10"],
        extras: set({ "shower-1": { appliance: "shower" } }),
        gives: ["fix bathroom way-1"],
      },
      {
        title: "is asked for lights in a bathroom, which is the graver reason",
        lines: ["way-1.a lamp-1.a"],
        extras: set({ "lamp-1": { inBathroom: true } }),
        gives: ["fix bathroom way-1"],
      },
      {
        title: "is a matter of danger on TT",
        lines: ring,
        extras: tt(0),
        gives: ["danger socket-outlets-tt way-1"],
      },
      {
        title: "is a matter of danger for lights on TT",
        lines: ["way-1.a lamp-1.a"],
        extras: tt(0),
        gives: ["danger lighting-tt way-1"],
      },
      {
        title: "is a matter of danger for a shower on TT",
        lines: ["way-1.a shower-1.a 10"],
        extras: set({ "shower-1": { appliance: "shower" } }, { supply: { earthing: "TT" } }),
        gives: ["danger bathroom-tt way-1"],
      },
      {
        title: "of an unused way is no matter",
        lines: ["way-2.a socket-1.a"],
        extras: { ...(way(0) as object), also: ["way-1"] },
        gives: [],
      },
      {
        title: "is asked for socket outlets whatever the device",
        lines: ring,
        extras: way(0, { deviceRatingA: undefined }),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is asked on a 40 A way for the socket outlet in a cooker control",
        lines: cooker,
        extras: set({ "way-1": { rcdMa: 0, deviceRatingA: 40 }, "control-1": { hasSocketOutlet: true } }),
        gives: ["fix socket-outlets way-1"],
      },
      {
        title: "is a matter of danger on TT on a 63 A way",
        lines: ring,
        extras: tt(0, { deviceRatingA: 63 }),
        gives: ["danger socket-outlets-tt way-1"],
      },
    ],
    ["buried", "buried-tt", "metal-framed", "metal-framed-tt"],
  );

  it.each(
    [
      { where: "buried 49 mm deep", route: { depthMm: 49 }, reason: "buried" },
      {
        where: "in a metal-framed wall at any depth",
        route: { depthMm: 80, inMetalFramedWall: true },
        reason: "metal-framed",
      },
    ].flatMap((row) => [
      { ...row, earthing: "TN-S" as const, gives: [`fix ${row.reason} way-1`] },
      { ...row, earthing: "TT" as const, gives: [`danger ${row.reason}-tt way-1`] },
    ]),
  )("is asked for a cooker cable $where on $earthing", ({ route, earthing, gives }) => {
    const wiring = wire(cooker, { ...(way(0) as object), supply: { earthing } });
    wiring.cables = wiring.cables.map((cable) => ({ ...cable, ...route }));
    expect(said(rcd, wiring)).toEqual(gives);
  });

  // What hangs on which way is not known until they are parted: the way that is told lacks it apart, too.
  describe.each([
    { where: "on the first way", outlets: "way-1", others: "way-2" },
    { where: "on the second way", outlets: "way-2", others: "way-1" },
  ])("on none of two ways that meet, socket outlets $where", ({ outlets, others }) => {
    const settings = {
      "way-1": { rcdMa: 0 },
      "way-2": { rcdMa: 0 },
      "heater-1": { appliance: "water-heater" as const },
    };
    const apart = [
      `${outlets}.a socket-1.a 4`,
      "socket-1.b socket-2.a 4",
      `${others}.a isolator-1.a 4`,
      "isolator-1.c heater-1.a 4",
    ];

    it.each([
      { what: "apart", joint: [] },
      { what: "joined at the outlets' end", joint: ["socket-2.b isolator-1.b 4"] },
      { what: "joined from way to way", joint: ["way-1.b way-2.b 4"] },
    ])("is asked for once: $what", ({ joint }) => {
      expect(said(rcd, wire([...apart, ...joint], { settings }))).toEqual([`fix socket-outlets ${outlets}`]);
    });
  });

  it("is asked for once where two ways with socket outlets meet", () => {
    const lines = ["way-1.a socket-1.a 4", "way-2.a socket-2.a 4", "socket-1.b socket-2.b 4"];
    const settings = { "way-1": { rcdMa: 0 }, "way-2": { rcdMa: 0 } };
    expect(said(rcd, wire(lines.slice(0, 2), { settings }))).toEqual([
      "fix socket-outlets way-1",
      "fix socket-outlets way-2",
    ]);
    expect(said(rcd, wire(lines, { settings }))).toEqual(["fix socket-outlets way-1"]);
  });

  it("is not asked for a cooker cable buried 50 mm deep", () => {
    const wiring = wire(cooker, way(0));
    wiring.cables = wiring.cables.map((cable) => ({ ...cable, depthMm: 50 }));
    expect(said(rcd, wiring)).toEqual([]);
  });
});
