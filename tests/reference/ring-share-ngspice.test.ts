import { describe, expect, it } from "vitest";
import type { StationId } from "../../shared/board/ids.ts";
import { copperOf } from "../../shared/electrical/copper.ts";
import { asBuilt } from "../../shared/electrical/hidden-faults.ts";
import { runLoads } from "../../shared/electrical/load-run.ts";
import type { Network, Resistor } from "../../shared/electrical/network.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";
import { testDepth } from "../depth.ts";
import { seeded } from "../seeded.ts";
import { skipsNgspice, solveWithNgspice } from "./ngspice.ts";

/** Largest resistance at 20 °C, BS EN 60228, in ohm per metre. */
const ohmPerM = { 1.5: 0.0121, 2.5: 0.00741, 4: 0.00461 } as const;
/** Copper in air of 30 °C, where cables begin: 0.004 a kelvin (BS EN 60228, Annex). */
const warmer = 1 + 0.004 * (30 - 20);
/** Line's part of the supply, as the wiring states it. */
const zeOhm = 0.35;

interface Ring {
  /** From the way round and back to it: one more than there are points. */
  legs: { lengthM: number; csaMm2: keyof typeof ohmPerM }[];
  /** Watts at each point, in the order of the ring; 0 where nothing is on. */
  powerW: number[];
}

function randomRing(seed: number): Ring {
  const random = seeded(seed);
  const pointCount = 2 + Math.floor(random() * 5);
  const sizes = [1.5, 2.5, 4] as const;
  const csaMm2 = sizes[Math.floor(random() * sizes.length)]!;
  const powerW = Array.from({ length: pointCount }, () => (random() < 0.5 ? 0 : 100 + 2900 * random()));
  powerW[Math.floor(random() * pointCount)] = 3000;
  return {
    legs: Array.from({ length: pointCount + 1 }, () => ({ lengthM: 2 + 20 * random(), csaMm2 })),
    powerW,
  };
}

/** What flows into the two ends when the loads are switched on, as the step Load has it. */
function legsOfRun({ legs, powerW }: Ring): [number, number] {
  const stops = ["way-1", ...powerW.map((_, index) => `socket-${index + 1}`), "way-1"];
  const read = readWiring(
    JSON.stringify({
      version: 1,
      supply: { earthing: "TN-C-S", zeOhm },
      stations: [
        {
          id: "way-1",
          kind: "way",
          settings: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32, rcdMa: 30 },
        },
        ...powerW.map((_, index) => ({
          id: `socket-${index + 1}`,
          kind: "socket-outlet",
          settings: { gangs: 2 },
        })),
      ],
      cables: legs.map((leg, index) => ({
        from: index === 0 ? "way-1.a" : `${stops[index]}.b`,
        to: index === legs.length - 1 ? "way-1.b" : `${stops[index + 1]}.a`,
        method: "C",
        ...leg,
      })),
    }),
    "ring.json",
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const loads = powerW.flatMap((watts, index) =>
    watts > 0 ? [{ id: `${index}`, station: `socket-${index + 1}` as StationId, powerW: watts }] : [],
  );
  const { rings } = runLoads({
    wiring: read.value,
    built: asBuilt(copperOf(read.value), []),
    loads,
    programme: loads.map(({ id }) => ({ load: id, isOn: true, atS: 0 })),
    durationS: 60,
    stepS: 60,
    deviceA: new Map(),
  });
  const [ring] = rings;
  const leg = (end: string): number => ring!.legA[ring!.ends.findIndex((one) => one === end) as 0 | 1][0]!;
  return [leg("way-1.a"), leg("way-1.b")];
}

/** The same ring written down anew as a netlist: two conductors of copper and a resistor for each load. */
function netOf({ legs, powerW }: Ring): Network {
  // Nodes 0 and 1 are line and neutral at the way; each point has two more.
  const lineAt = (stop: number): number => (stop === 0 || stop === legs.length ? 0 : 2 * stop);
  const conductors = legs.flatMap(({ lengthM, csaMm2 }, index): Resistor[] =>
    [0, 1].map((pole) => ({
      a: lineAt(index) + pole,
      b: lineAt(index + 1) + pole,
      resistanceOhm: ohmPerM[csaMm2] * warmer * lengthM,
    })),
  );
  const loads = powerW.flatMap((watts, index): Resistor[] =>
    watts > 0 ? [{ a: lineAt(index + 1), b: lineAt(index + 1) + 1, resistanceOhm: 230 ** 2 / watts }] : [],
  );
  const source = 2 * powerW.length + 2;
  return {
    nodeCount: 2 * powerW.length + 3,
    resistors: [...conductors, ...loads, { a: 0, b: source, resistanceOhm: zeOhm }],
    held: [
      { node: source, voltageV: 230 },
      { node: 1, voltageV: 0 },
    ],
  };
}

describe.skipIf(skipsNgspice)("how a ring under load shares its current", () => {
  it("is what ngspice has for the same copper, wherever the loads are", () => {
    const rings = Array.from({ length: 20 * testDepth }, (_, seed) => randomRing(seed + 1));
    const answers = solveWithNgspice(rings.map((ring) => ({ network: netOf(ring), sources: [] })));
    rings.forEach((ring, index) => {
      const [one, two] = legsOfRun(ring);
      const { resistorCurrentA } = answers[index]!;
      const first = Math.abs(resistorCurrentA[0]!);
      const last = Math.abs(resistorCurrentA[2 * (ring.legs.length - 1)]!);
      expect(Math.abs(one - first), `ring ${index}`).toBeLessThan(1e-6 * first + 1e-6);
      expect(Math.abs(two - last), `ring ${index}`).toBeLessThan(1e-6 * last + 1e-6);
    });
  });
});
