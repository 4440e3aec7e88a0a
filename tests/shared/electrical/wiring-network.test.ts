import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cableId, type EntryId, type StationId } from "../../../shared/board/ids.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import {
  cableCurrents,
  dropV,
  loadNodes,
  solveWiring,
  type WiringConditions,
  wiringNetwork,
} from "../../../shared/electrical/wiring-network.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { randomWiring } from "../../reference/random-wiring.ts";
import { terse } from "./terse-wiring.ts";

const id = (station: string): StationId => station as StationId;
const cable = (a: string, b: string): string => cableId(a as EntryId, b as EntryId);

function run(wiring: Wiring, conditions: WiringConditions = { temperatureC: 70 }) {
  const copper = copperOf(wiring);
  const net = wiringNetwork(copper, conditions);
  const loads = (wiring.loads ?? []).flatMap(({ station, powerW }) => {
    const nodes = loadNodes(copper, station);
    return nodes ? [{ ...nodes, currentA: powerW / 230 }] : [];
  });
  const solution = solveWiring(net, loads);
  const lost = (station: string): number | undefined => dropV(solution, loadNodes(copper, id(station))!);
  return { copper, net, solution, lost, currents: cableCurrents(copper, solution) as Map<string, number> };
}

describe("the legs of a ring", () => {
  const ring = terse({
    cables: ["way-1.a socket-1.a 2.5 10", "socket-1.b socket-2.a 2.5 20", "socket-2.b way-1.b 2.5 10"],
    loads: { "socket-1": 2300 },
  });

  it("share a load in the inverse of their lengths", () => {
    const { currents } = run(ring);
    expect(currents.get(cable("way-1.a", "socket-1.a"))).toBeCloseTo(7.5, 9);
    expect(currents.get(cable("socket-2.b", "way-1.b"))).toBeCloseTo(2.5, 9);
  });

  it("give the device the whole of it", () => {
    const { copper, solution } = run(ring);
    const device = copper.links.findIndex(({ kind }) => kind === "device");
    expect(solution.linkA[device]).toBeCloseTo(10, 9);
  });
});

describe("voltage drop from the origin", () => {
  // Published worked example of a ring: 40 m, 32 A at the middle, 18 mV/A/m: 5.76 V; as a radial 23.04 V. The table
  // rounds 2 x 7.41 x 1.20 = 17.78 to 18.
  it("of 32 A in the middle of a 40 m ring is a quarter of what it is along 40 m of radial", () => {
    const ring = terse({
      cables: ["way-1.a socket-1.a 2.5 20", "socket-1.b way-1.b 2.5 20"],
      loads: { "socket-1": 32 * 230 },
    });
    const radial = terse({ cables: ["way-1.a socket-1.a 2.5 40"], loads: { "socket-1": 32 * 230 } });
    expect(run(ring).lost("socket-1")! / 17.784).toBeCloseTo(5.76 / 18, 6);
    expect(run(radial).lost("socket-1")! / 17.784).toBeCloseTo(23.04 / 18, 6);
  });

  it("is not known where the neutral is missing, and no current flows there", () => {
    const { lost, currents } = run(
      terse({ cables: ["way-1.a socket-1.a 2.5 10 L-L E-E"], loads: { "socket-1": 2300 } }),
    );
    expect(lost("socket-1")).toBeUndefined();
    expect(currents.get(cable("way-1.a", "socket-1.a"))).toBe(0);
  });
});

describe("a lamp", () => {
  // Looped at the rose: the switch cable brings line down and switched line back up.
  const lighting = terse({
    cables: ["way-1.a rose-1.a 1.5 8", "rose-1.s switch-1.s 1.5 4"],
    loads: { "rose-1": 100 },
  });

  it("draws its current when the switch is on and none when it is off", () => {
    expect(run(lighting).currents.get(cable("rose-1.s", "switch-1.s"))).toBeCloseTo(100 / 230, 6);
    const off = { temperatureC: 70, positions: new Map([[id("switch-1"), 0 as const]]) };
    expect(run(lighting, off).currents.get(cable("rose-1.s", "switch-1.s"))).toBe(0);
  });
});

describe("current behind a fused connection unit", () => {
  const wiring = terse({
    cables: ["way-1.a fcu-1.a 2.5 10", "fcu-1.c socket-1.a 1.5 5", "socket-1.b socket-2.a 1.5 5"],
    loads: { "socket-1": 1150, "socket-2": 690 },
  });

  it("passes the fuse in total", () => {
    const { copper, solution } = run(wiring);
    const fuse = copper.links.findIndex(({ kind }) => kind === "fuse");
    expect(solution.linkA[fuse]).toBeCloseTo(8, 9);
  });

  it("stops when the fuse is open", () => {
    const { copper } = run(wiring);
    const net = wiringNetwork(copper, {
      temperatureC: 70,
      openLinks: new Set(copper.links.filter(({ kind }) => kind === "fuse")),
    });
    const { conductorA } = solveWiring(net, [{ ...loadNodes(copper, id("socket-1"))!, currentA: 5 }]);
    expect([...conductorA].every((currentA) => currentA === 0)).toBe(true);
  });
});

describe("a line that meets neutral", () => {
  it("draws what the supply's impedance lets through", () => {
    const wiring = terse({ cables: ["way-1.a socket-1.a 2.5 10 L-N N-L E-E", "way-1.b socket-1.b 2.5 10"] });
    const { copper, net, solution } = run(wiring, { temperatureC: 20, supply: { zeOhm: 0.35 } });
    // Line to the socket outlet's N bus by one cable and back by the other, twice side by side: 2 x 0.0741 / 2.
    const device = copper.links.findIndex(({ kind }) => kind === "device");
    expect(solution.linkA[device]).toBeCloseTo(230 / (0.35 + 0.0741), 6);
    expect(net.unknownCables.size).toBe(0);
  });
});

describe("a cable whose size nobody has said", () => {
  it("is named, so that no figure is taken from it", () => {
    const { net } = run(terse({ cables: ["way-1.a socket-1.a ? 10", "socket-1.b socket-2.a 2.5 10"] }));
    expect([...net.unknownCables]).toEqual([cable("way-1.a", "socket-1.a")]);
  });
});

describe("whatever is wired", () => {
  const seedOfCables = fc
    .integer({ min: 1, max: 1e9 })
    .filter((seed) => randomWiring(seed).cables.length > 0);

  it("adding length to a cable never brings any point nearer to the origin", () => {
    fc.assert(
      fc.property(seedOfCables, fc.nat(), (seed, which) => {
        const wiring = randomWiring(seed);
        const place = which % wiring.cables.length;
        const longer = {
          ...wiring,
          cables: wiring.cables.map((each, index) =>
            index === place ? { ...each, lengthM: each.lengthM! + 10 } : each,
          ),
        };
        const [before, after] = [wiring, longer].map((each) =>
          wiringNetwork(copperOf(each), { temperatureC: 20 }).prepared.ownOhm(),
        );
        before!.forEach((ohm, node) => {
          if (ohm < Infinity) expect(after![node]!).toBeGreaterThanOrEqual(ohm * (1 - 1e-12));
        });
      }),
    );
  });

  it("naming a cable from its other end changes no current", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const wiring = randomWiring(seed);
        const turned = {
          ...wiring,
          cables: wiring.cables.map(({ from, to, conductors, ...rest }) => ({
            ...rest,
            from: to,
            to: from,
            ...(conductors ? { conductors: conductors.map(([a, b]): [typeof b, typeof a] => [b, a]) } : {}),
          })),
        };
        const [one, two] = [wiring, turned].map((each) => [...run(each).currents]);
        expect(two!.map(([id]) => id)).toEqual(one!.map(([id]) => id));
        one!.forEach(([, currentA], index) => expect(two![index]![1]).toBeCloseTo(currentA, 9));
      }),
    );
  });
});
