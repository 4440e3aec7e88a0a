import { describe, expect, it } from "vitest";
import { type ContactId, type StationId, stationOf } from "../../shared/board/ids.ts";
import { copperOf } from "../../shared/electrical/copper.ts";
import { asBuilt } from "../../shared/electrical/hidden-faults.ts";
import { leftInOhm, partsThatCanBeIn } from "../../shared/electrical/left-in-parts.ts";
import { meterNetwork, type MeterSetup } from "../../shared/electrical/meter-setup.ts";
import { resistanceBetweenOhm, ringEndsAt } from "../../shared/electrical/meter.ts";
import type { Network } from "../../shared/electrical/network.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import { type RingEndState, ringEndStates } from "../../shared/wiring/test-words.ts";
import { testDepth } from "../depth.ts";
import { seeded } from "../seeded.ts";
import { islands, skipsNgspice, solveWithNgspice } from "./ngspice.ts";
import { randomWiring } from "./random-wiring.ts";

/** Above this there is only insulation, which ngspice's own shunts of 1e15 ohm would blur. */
const copperToOhm = 1e5;

interface Case {
  seed: number;
  ours: number;
  network: Network;
  from: number;
  to: number;
}

/** A meter on any wiring: a hidden fault, ring ends, a link and loads as chance leaves them, two probes anywhere. */
function randomReading(seed: number): Case | undefined {
  const wiring = randomWiring(seed);
  const random = seeded(seed + 7919);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const copper = copperOf(wiring);
  if (copper.conductors.length === 0) return undefined;
  const { cable } = pick(copper.conductors);
  const faults: HiddenFault[] = [
    { kind: "high-resistance", cable, role: pick(["L", "N", "E"]), resistanceOhm: 0.1 + 5 * random() },
    ...(random() < 0.5
      ? [
          {
            kind: "low-insulation" as const,
            cable,
            between: ["L", "E"] as ["L", "E"],
            insulationMegohm: 0.01 + 0.02 * random(),
          },
        ]
      : []),
  ];
  const built = asBuilt(copper, faults);
  const way = wiring.stations.find(({ kind }) => kind === "way")!.id;
  const ends = ringEndsAt(copper, way);
  const state: RingEndState = pick(ringEndStates);
  const loads = wiring.loads ?? [];
  const partsIn = partsThatCanBeIn(wiring.stations, loads).filter(() => random() < 0.5);
  const setup: MeterSetup = {
    ...(ends ? { ringEnds: new Map([[way, { ends, state, with: pick(["N", "E"]) }]]) } : {}),
    ...(random() < 0.6
      ? {
          links: [
            {
              way,
              between: pick([
                ["L", "E"],
                ["L", "N"],
                ["N", "E"],
              ]),
            },
          ],
        }
      : {}),
    positions: new Map(copper.buses.switches.map((id): [StationId, 0 | 1] => [id, random() < 0.5 ? 0 : 1])),
    partsIn: leftInOhm(partsIn, loads, pick(["low-ohms", "insulation"])),
  };
  const places = built.conductors.flatMap(({ from, to }) => [from, to]);
  const red = pick(places);
  const others = places.filter((place) => stationOf(place) === stationOf(red) || random() < 0.5);
  const black: ContactId = pick(others.length > 0 ? others : places);
  const meter = meterNetwork(built, setup);
  const [from, to] = [meter.nodeOfProbe(black)!, meter.nodeOfProbe(red)!];
  const ours = resistanceBetweenOhm(meter, red, black)!;
  return { seed, ours, network: { ...meter.network, held: [{ node: from, voltageV: 0 }] }, from, to };
}

describe.skipIf(skipsNgspice)("readings on wirings of any kind, against ngspice", () => {
  it("are what ngspice gives for a hundred places to put the probes", () => {
    const cases: Case[] = [];
    for (let seed = 1; cases.length < 100 * testDepth; seed++) {
      const one = randomReading(seed);
      if (one && one.from !== one.to) cases.push(one);
    }
    const answers = solveWithNgspice(
      cases.map(({ network, from, to }) => ({ network, sources: [{ from, to, currentA: 1 }] })),
    );
    const wrong: string[] = [];
    let copperCount = 0;
    cases.forEach(({ seed, ours, network, from, to }, index) => {
      // Between islands the netlist has ties of its own; whether there is a way at all is found by flooding.
      const { root } = islands(network);
      const theirs = root[from] === root[to] ? answers[index]!.voltageV[to]! : Infinity;
      const isCopper = ours < copperToOhm;
      if (isCopper) copperCount++;
      const isAlike = isCopper
        ? Math.abs(ours - theirs) <= Math.max(1e-6, 1e-6 * theirs)
        : theirs >= copperToOhm;
      if (!isAlike) wrong.push(`seed ${seed}: ${ours} against ${theirs} ohm`);
    });
    expect(wrong).toEqual([]);
    expect(copperCount).toBeGreaterThanOrEqual(50 * testDepth);
  });
});
