import { describe, expect, it } from "vitest";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { wire } from "../rules/wire.ts";

const zone = (...lines: string[]) => {
  const [first] = buildModel(wire(lines)).zones;
  if (!first) throw new Error("no zone");
  return first;
};

describe("the shape of what a way feeds", () => {
  it("is a ring when its cables come back to the way", () => {
    const { rings, branches, loops } = zone(
      "way-1.a socket-1.a",
      "socket-1.b socket-2.a",
      "socket-2.b way-1.b",
    ).shape;
    expect(rings).toHaveLength(1);
    expect(rings[0]?.stations).toEqual(["way-1", "socket-1", "socket-2"]);
    expect(rings[0]?.closes).toEqual({ live: true, neutral: true, earth: true });
    expect(branches).toEqual([]);
    expect(loops).toEqual([]);
  });

  it("keeps the ring where one core of it is open, and says which", () => {
    const { rings } = zone("way-1.a socket-1.a", "socket-1.b socket-2.a -E", "socket-2.b way-1.b").shape;
    expect(rings[0]?.closes).toEqual({ live: true, neutral: true, earth: false });
    expect(rings[0]?.runs[1]?.missing.map(({ id }) => id)).toEqual(["socket-1.b.E~socket-2.a.E"]);
  });

  it("has a branch for a spur, which starts where it leaves the ring", () => {
    const { branches } = zone(
      "way-1.a socket-1.a",
      "socket-1.b socket-2.a",
      "socket-2.b way-1.b",
      "socket-2.c socket-3.a",
      "socket-3.b socket-4.a",
    ).shape;
    expect(
      branches.map(({ near, far, depth, pointCount, end }) => ({ near, far, depth, pointCount, end })),
    ).toEqual([
      { near: "socket-2", far: "socket-3", depth: 1, pointCount: 2, end: 2 },
      { near: "socket-3", far: "socket-4", depth: 2, pointCount: 1, end: 2 },
    ]);
  });

  it("ends at a fuse: what is beyond it is a zone of its own", () => {
    const model = buildModel(wire(["way-1.a fcu-1.a", "fcu-1.c lamp-1.a 1", "lamp-1.b lamp-2.a 1"]));
    expect(model.zones.map(({ upstream, points, isFused }) => ({ upstream, points, isFused }))).toEqual([
      { upstream: { station: "way-1", kind: "device", ratingA: 32 }, points: ["fcu-1"], isFused: false },
      {
        upstream: { station: "fcu-1", kind: "fuse", ratingA: 13 },
        points: ["lamp-1", "lamp-2"],
        isFused: true,
      },
    ]);
    expect(model.fusedLinks.map(({ isReversed }) => isReversed)).toEqual([false]);
  });

  it("tells a unit that is fed at its load side", () => {
    const model = buildModel(wire(["way-1.a fcu-1.c", "fcu-1.a lamp-1.a 1"]));
    expect(model.fusedLinks.map(({ isReversed }) => isReversed)).toEqual([true]);
    expect(model.zones[1]?.points).toEqual(["lamp-1"]);
  });

  it("counts a leg whose line is missing to the way it hangs on", () => {
    const model = buildModel(wire(["way-1.a socket-1.a", "socket-1.b socket-2.a -L"]));
    expect(model.zones[0]?.points).toEqual(["socket-1", "socket-2"]);
    expect(model.cables[0]?.circuits).toEqual(["way-1"]);
  });
});
