import { describe, expect, it } from "vitest";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";
import { faultLoop } from "../../../shared/rules/fault-loop.ts";
import { factsOf, said } from "./check-electrical.ts";
import { type Extras, wire } from "./wire.ts";

const way = (settings: StationSettings, more: Extras = {}): Extras => ({
  ...more,
  settings: { ...more.settings, "way-1": settings },
});
const noRcd = { rcdMa: 0 };

// BS 7671 Table 41.3: B32 1.37 ohm. 2.5/1.5 mm² hot: 19.51 x 1.2 = 23.412 milliohm per metre; Ze 0.35 ohm is assumed.
describe("a fault at the end of a radial", () => {
  it.each([
    { lengthM: 43.5, says: [] },
    { lengthM: 43.6, says: ["danger never socket-1"] },
  ])("behind B32 without an RCD is in time up to 1.37 ohm: $lengthM m", ({ lengthM, says }) => {
    expect(said(faultLoop, wire([`way-1.a socket-1.a ${lengthM}m`], way(noRcd)))).toEqual(says);
  });

  it("is a query where the RCD sees it and the device does not", () => {
    expect(said(faultLoop, wire(["way-1.a socket-1.a 44m"]))).toEqual(["query rcd-only socket-1"]);
  });

  it("gives Zs and its limit at the furthest point, once for all points", () => {
    const wiring = wire(["way-1.a socket-1.a 44m", "socket-1.b socket-2.a 10m"]);
    expect(said(faultLoop, wiring)).toEqual(["query rcd-only socket-2"]);
    const facts = factsOf(faultLoop, wiring);
    expect(facts["zsOhm"]).toBeCloseTo(0.35 + 54 * 0.023412, 9);
    expect(facts["limitOhm"]).toBe(1.37);
  });

  it("takes 0.8 ohm on TN-S where no Ze is stated: 24.3 m fit under 1.37 ohm, 24.4 m do not", () => {
    const radial = (lengthM: number) =>
      wire([`way-1.a socket-1.a ${lengthM}m`], way(noRcd, { supply: { earthing: "TN-S" } }));
    expect(said(faultLoop, radial(24.3))).toEqual([]);
    expect(said(faultLoop, radial(24.4))).toEqual(["danger never socket-1"]);
  });

  it("takes the stated Ze", () => {
    const wiring = wire(["way-1.a socket-1.a 44m"], way(noRcd, { supply: { zeOhm: 0.2 } }));
    expect(said(faultLoop, wiring)).toEqual([]);
  });
});

describe("a fault on a ring", () => {
  it("in the middle sees both legs side by side", () => {
    // Published worked example (recomputed), 54 m of ring, Ze 0.24 ohm: Zs hot 0.5561 ohm; type D 32 A allows 0.34 ohm.
    const wiring = wire(
      ["way-1.a socket-1.a 27m", "socket-1.b way-1.b 27m"],
      way({ deviceCurve: "D" }, { supply: { zeOhm: 0.24 } }),
    );
    expect(factsOf(faultLoop, wiring)["zsOhm"]).toBeCloseTo(0.5561, 4);
  });
});

describe("a fault beyond a connection unit", () => {
  it("is in time by the fuse where the way's device is not", () => {
    // BS 7671 Table 41.2: BS 1362 13 A 2.30 ohm (from memory). 60 m come to 1.75 ohm.
    const wiring = wire(["way-1.a fcu-1.a 30m", "fcu-1.c socket-1.a 30m"], way(noRcd));
    expect(said(faultLoop, wiring)).toEqual([]);
  });

  it("is dangerous where neither is", () => {
    const wiring = wire(["way-1.a fcu-1.a 30m", "fcu-1.c socket-1.a 60m"], way(noRcd));
    expect(said(faultLoop, wiring)).toEqual(["danger never socket-1"]);
  });

  it("of a rating without a listed limit is held to the 13 A one", () => {
    const wiring = (lengthM: number) =>
      wire(["way-1.a fcu-1.a 30m", `fcu-1.c socket-1.a ${lengthM}m`], {
        settings: { "way-1": noRcd, "fcu-1": { fuseRatingA: 5 } },
      });
    expect(said(faultLoop, wiring(53))).toEqual([]);
    expect(said(faultLoop, wiring(54))).toEqual(["danger never socket-1"]);
  });
});

describe("a fixed load", () => {
  it("above 32 A on a breaker is held to the same limit: B40 1.09 ohm", () => {
    // BS 7671 411.3.2.3 allows 5 s there, but a breaker opens by its instantaneous release or far too late. 6/2.5 mm² hot
    // is 12.588 milliohm per metre: 58 m come to 1.080 ohm, 59 m to 1.093 ohm.
    const shower = (lengthM: number) =>
      wire([`way-1.a shower-1.a 6 ${lengthM}m`], way({ ...noRcd, deviceRatingA: 40 }));
    expect(said(faultLoop, shower(58))).toEqual([]);
    expect(said(faultLoop, shower(59))).toEqual(["danger never shower-1"]);
  });

  it("to 32 A on a fuse is held to 0.4 s: BS 88-3 32 A 0.91 ohm", () => {
    const fuse = { ...noRcd, deviceStandard: "BS 88-3", deviceRatingA: 32 } as const;
    const heater = (lengthM: number) => wire([`way-1.a heater-1.a 6 ${lengthM}m`], way(fuse));
    expect(said(faultLoop, heater(44))).toEqual([]);
    expect(said(faultLoop, heater(45))).toEqual(["danger never heater-1"]);
  });

  it("on a fuse whose limit is not listed is not judged", () => {
    const fuse = { ...noRcd, deviceStandard: "BS 88-3", deviceRatingA: 44 } as const;
    expect(said(faultLoop, wire(["way-1.a shower-1.a 10 10m"], way(fuse)))).toEqual([
      "missing maximumZsOhm way-1",
    ]);
  });
});

describe("on an earth electrode", () => {
  const tt = (electrodeOhm: number | undefined, settings: StationSettings = {}) =>
    wire(
      ["way-1.a socket-1.a 10m"],
      way(settings, { supply: { earthing: "TT", ...(electrodeOhm === undefined ? {} : { electrodeOhm }) } }),
    );

  // BS 7671 411.5.3: RA x IdN <= 50 V, so 1667 ohm for 30 mA and 500 ohm for 100 mA. Table 41.5 note 2 (secondary copy):
  // above 200 ohm an electrode may not be stable. No overcurrent limit is asked where the RCD disconnects.
  it.each([
    { electrodeOhm: 200, settings: {}, says: [] },
    { electrodeOhm: 201, settings: {}, says: ["note electrode way-1"] },
    { electrodeOhm: 1666, settings: {}, says: ["note electrode way-1"] },
    { electrodeOhm: 1667, settings: {}, says: ["danger tt way-1"] },
    { electrodeOhm: 499, settings: { rcdMa: 100 }, says: ["note electrode way-1"] },
    { electrodeOhm: 150, settings: { deviceStandard: "BS 3036", deviceRatingA: 30 }, says: [] },
    { electrodeOhm: 150, settings: { deviceStandard: "BS 88-3", deviceRatingA: 32 }, says: [] },
    { electrodeOhm: 150, settings: { deviceStandard: "BS 3036", deviceRatingA: 44 }, says: [] },
    { electrodeOhm: 300, settings: noRcd, says: ["danger never socket-1"] },
    { electrodeOhm: 500, settings: { rcdMa: 100 }, says: ["danger tt way-1"] },
    { electrodeOhm: 20, settings: noRcd, says: ["danger never socket-1"] },
  ])("of $electrodeOhm ohm with $settings.rcdMa mA says $says", ({ electrodeOhm, settings, says }) => {
    expect(said(faultLoop, tt(electrodeOhm, settings as StationSettings))).toEqual(says);
  });

  it("of unknown resistance nothing can be said", () => {
    expect(said(faultLoop, tt(undefined))).toEqual(["missing electrodeOhm way-1"]);
  });
});

describe("where something is not known", () => {
  it.each([
    { field: "deviceCurve", keep: { deviceStandard: "BS EN 60898", deviceRatingA: 32 } },
    { field: "deviceStandard", keep: { deviceCurve: "B", deviceRatingA: 32 } },
    { field: "deviceRatingA", keep: { deviceStandard: "BS EN 60898", deviceCurve: "B" } },
  ])("the device's $field is asked for", ({ field, keep }) => {
    const wiring = wire(["way-1.a socket-1.a 10m"]);
    const stations = wiring.stations.map((station) =>
      station.id === "way-1" ? { ...station, settings: keep as StationSettings } : station,
    );
    expect(said(faultLoop, { ...wiring, stations })).toEqual([`missing ${field} way-1`]);
  });

  it("the cable is named", () => {
    expect(said(faultLoop, wire(["way-1.a socket-1.a ? 10m"]))).toEqual([
      "missing csaMm2 socket-1.a~way-1.a",
    ]);
  });

  it.each(["L:N N:L E:E", "L:L N:E E:N", "L:E N:N E:L"])(
    "nothing is worked out while a core is crossed somewhere in the circuit: %s",
    (cores) => {
      const wiring = wire([`way-1.a socket-1.a 5m ${cores}`, "way-1.b socket-2.a 90m"], way(noRcd));
      expect(said(faultLoop, wiring)).toEqual([]);
    },
  );

  it("a crossed core in one circuit leaves the figures of another", () => {
    const wiring = wire(["way-2.a socket-1.a 5m L:N N:L E:E", "way-1.a socket-2.a 90m"], way(noRcd));
    expect(said(faultLoop, wiring)).toEqual(["danger never socket-2"]);
  });

  it("a point without earth has no loop", () => {
    expect(said(faultLoop, wire(["way-1.a socket-1.a 90m -E"], way(noRcd)))).toEqual([]);
  });
});
