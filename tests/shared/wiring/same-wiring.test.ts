import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cableId, endsOfCable } from "../../../shared/board/ids.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";
import { walkedTheOtherWay, withOtherNames } from "../../../shared/wiring/same-wiring.ts";
import { type Wiring, wiringSchema } from "../../../shared/wiring/wiring.schema.ts";
import { testDepth } from "../../depth.ts";

const wiring: Wiring = wiringSchema.parse({
  version: 1,
  stations: [
    { id: "way-1", kind: "way" },
    { id: "fcu-1", kind: "fcu", settings: { fuseRatingA: 3 } },
    {
      id: "socket-1",
      kind: "socket-outlet",
      entries: ["a", "b", "c"].map((letter) => ({ letter, side: "feed" })),
    },
  ],
  cables: [
    {
      from: "way-1.a",
      to: "socket-1.a",
      csaMm2: 2.5,
      conductors: [
        ["L", "N"],
        ["E", "E"],
      ],
    },
    { from: "socket-1.c", to: "fcu-1.a", csaMm2: 1.5 },
  ],
  loads: [{ station: "socket-1", powerW: 100 }],
  unknown: ["socket-1.b.N"],
  wants: [
    { kind: "served", stations: ["socket-1"] },
    { kind: "one-circuit", stations: ["socket-1", "fcu-1"], way: "way-1" },
    { kind: "shape", of: "way-1", shape: "radial" },
    { kind: "kept", cables: ["socket-1.a~way-1.a"] },
    { kind: "in-ring", stations: ["socket-1"] },
    { kind: "unfused-spur", stations: ["socket-1"] },
    { kind: "through-fcu", stations: ["socket-1"], fcu: "fcu-1" },
    { kind: "own-switch", stations: ["socket-1"], by: "fcu-1" },
    { kind: "fuse", stations: ["socket-1"], mostA: 3 },
    { kind: "sized", way: "way-1" },
    { kind: "thrift", csaMm2: [1.5, 2.5] },
    { kind: "device", way: "way-1", ratingA: [20] },
    { kind: "readings", way: "way-1", tests: ["polarity"] },
    { kind: "fault-named", faults: ["open"] },
  ],
  taskStations: ["way-1", "socket-1"],
  readings: [{ test: "polarity", way: "way-1", red: "socket-1.front.L", black: "way-1.b.E" }],
});

describe("a wiring under other names", () => {
  const other = withOtherNames(wiring);

  it("has none of the old names anywhere and still holds together", () => {
    expect(JSON.stringify(other)).not.toMatch(/way-1|socket-1|fcu-1/);
    expect(readWiring(other, "other.json")).toMatchObject({ ok: true });
  });

  it("sorts its stations the other way round", () => {
    const kinds = (of: Wiring) =>
      of.stations.toSorted((a, b) => (a.id < b.id ? -1 : 1)).map(({ kind }) => kind);
    expect(kinds(other)).toEqual(kinds(wiring).toReversed());
  });

  it("has the same loads, sizes and settings", () => {
    expect(other.cables.map(({ csaMm2 }) => csaMm2)).toEqual([2.5, 1.5]);
    expect(other.stations.map(({ settings }) => settings)).toEqual([
      undefined,
      { fuseRatingA: 3 },
      undefined,
    ]);
    expect(other.loads?.[0]?.powerW).toBe(100);
  });
});

describe("a wiring walked the other way", () => {
  it("turns every cable round with its conductors and mirrors entries within their side", () => {
    const { cables } = walkedTheOtherWay(wiring);
    expect(cables).toEqual([
      { from: "fcu-1.b", to: "socket-1.a", csaMm2: 1.5 },
      {
        from: "socket-1.c",
        to: "way-1.f",
        csaMm2: 2.5,
        conductors: [
          ["N", "L"],
          ["E", "E"],
        ],
      },
    ]);
  });

  it("still holds together, and twice turned is the wiring again", () => {
    const once = walkedTheOtherWay(wiring);
    expect(readWiring(once, "turned.json")).toMatchObject({ ok: true });
    const twice = walkedTheOtherWay(once);
    expect(twice.cables).toEqual(wiring.cables);
    expect(twice.wants).toEqual(wiring.wants);
    expect(twice.unknown).toEqual(wiring.unknown);
  });

  it("joins the same pairs of stations, whatever the cables", () => {
    const entry = fc.constantFrom(
      "way-1.a",
      "way-1.b",
      "socket-1.a",
      "socket-1.b",
      "socket-1.c",
      "fcu-1.a",
      "fcu-1.c",
      "fcu-1.d",
    );
    const stationsJoined = (of: Wiring) =>
      of.cables
        .map(({ from, to }) =>
          endsOfCable(cableId(from, to))
            .map((end) => end.split(".")[0])
            .toSorted()
            .join("~"),
        )
        .toSorted();
    fc.assert(
      fc.property(fc.array(fc.tuple(entry, entry), { maxLength: 8 }), (ends) => {
        const built = wiringSchema.parse({ ...wiring, cables: ends.map(([from, to]) => ({ from, to })) });
        expect(stationsJoined(walkedTheOtherWay(built))).toEqual(stationsJoined(built));
      }),
      { numRuns: 100 * testDepth },
    );
  });
});
