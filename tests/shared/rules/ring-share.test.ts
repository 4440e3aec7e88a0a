import { describe, expect, it } from "vitest";
import { type Role, stationId } from "../../../shared/board/ids.ts";
import { ringShare } from "../../../shared/rules/ring-share.ts";
import { factsOf, said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const load = (station: string, powerW: number, isLongRunning = false) => ({
  station: stationId(station),
  powerW,
  isLongRunning,
});
/** Two outlets, the first a tenth of the way round 50 m of ring. */
const ring = (loads: ReturnType<typeof load>[], method = "A") =>
  wire(
    [
      `way-1.a socket-1.a 5m method-${method}`,
      `socket-1.b socket-2.a 20m method-${method}`,
      `socket-2.b way-1.b 25m method-${method}`,
    ],
    { loads },
  );

// BS 7671 Table 4D5: 2.5 mm² carries 20 A by method A, 27 A by method C. 433.1.204: no part above Iz for long.
describe("the legs of a ring", () => {
  it("share loads in the middle evenly and are sound", () => {
    expect(said(ringShare, ring([load("socket-2", 32 * 230)]))).toEqual([]);
  });

  it.each([
    // Nine tenths of the current goes by the near leg: 22.2 A x 0.9 = 19.98 A.
    { currentA: 22.2, says: [] },
    { currentA: 22.3, says: ["query share socket-1.a~way-1.a"] },
  ])("carry nine tenths of $currentA A by the near one: $says", ({ currentA, says }) => {
    expect(said(ringShare, ring([load("socket-1", currentA * 230)]))).toEqual(says);
  });

  it("must be put right where the load runs for hours", () => {
    const wiring = ring([load("socket-1", 25 * 230, true)]);
    expect(said(ringShare, wiring)).toEqual(["fix long socket-1.a~way-1.a"]);
    expect(factsOf(ringShare, wiring)["legA"]).toBeCloseTo(22.5, 9);
    expect(factsOf(ringShare, wiring)["ratingA"]).toBe(20);
  });

  it("are a query where only a short load on top of the long one is too much", () => {
    const wiring = ring([load("socket-1", 15 * 230, true), load("socket-1", 15 * 230)]);
    expect(said(ringShare, wiring)).toEqual(["query share socket-1.a~way-1.a"]);
  });

  it("hold the same load clipped to a wall", () => {
    expect(said(ringShare, ring([load("socket-1", 25 * 230, true)], "C"))).toEqual([]);
  });

  it("are not judged without stated loads", () => {
    expect(said(ringShare, ring([]))).toEqual([]);
  });

  it("are not worked out while a core is crossed: the current would be that of the fault", () => {
    const loads = [load("socket-1", 6000, true)];
    const sound = ring(loads);
    for (const conductors of [
      [
        ["L", "N"],
        ["N", "L"],
        ["E", "E"],
      ],
      [
        ["L", "E"],
        ["N", "N"],
        ["E", "L"],
      ],
    ] as const) {
      const [first, second, ...rest] = sound.cables;
      const crossed = { ...second!, conductors: conductors.map(([a, b]): [Role, Role] => [a, b]) };
      expect(said(ringShare, { ...sound, cables: [first!, crossed, ...rest] })).toEqual([]);
    }
  });

  it("are not judged on a radial", () => {
    const wiring = wire(["way-1.a socket-1.a 5m method-103"], { loads: [load("socket-1", 7000)] });
    expect(said(ringShare, wiring)).toEqual([]);
  });

  it("with a cable of unknown length are not known", () => {
    const wiring = ring([load("socket-1", 25 * 230)]);
    const [first, ...others] = wiring.cables;
    const { lengthM: _lengthM, ...shorn } = first!;
    expect(said(ringShare, { ...wiring, cables: [shorn, ...others] })).toEqual([
      "missing lengthM socket-1.a~way-1.a",
    ]);
  });
});
