import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { StationId } from "../../shared/board/ids.ts";
import { copperOf } from "../../shared/electrical/copper.ts";
import { asBuilt } from "../../shared/electrical/hidden-faults.ts";
import { runLoads } from "../../shared/electrical/load-run.ts";
import type { CurrentSource, Network, Resistor } from "../../shared/electrical/network.ts";
import { prepareNetwork } from "../../shared/electrical/network.ts";
import { wiringSchema } from "../../shared/wiring/wiring.schema.ts";
import { hasNgspice, netlist } from "../reference/ngspice.ts";
import { seeded } from "../seeded.ts";
import { ms, quantile, type SpeedLine, timedMs } from "./speed-line.ts";

interface Case {
  network: Network;
  sources: CurrentSource[];
}

/** A house of so many nodes: rings of twelve with a spur at every third point, loads at half of the points. */
function house(nodeCount: number, seed: number): Case {
  const random = seeded(seed);
  const resistors: Resistor[] = [];
  const lead = (a: number, b: number): void => {
    resistors.push({ a, b, resistanceOhm: 0.01 + 0.2 * random() });
  };
  let node = 1;
  while (node < nodeCount) {
    const points = Math.min(12, nodeCount - node);
    lead(0, node);
    let before = node;
    for (let index = 1; index < points; index++) {
      lead(before, node + index);
      if (index % 3 !== 2) before = node + index;
    }
    lead(before, 0);
    node += points;
  }
  const sources = Array.from({ length: Math.floor(nodeCount / 2) }, () => ({
    from: 1 + Math.floor(random() * (nodeCount - 1)),
    to: 0,
    currentA: 13 * random(),
  }));
  return { network: { nodeCount, resistors, held: [{ node: 0, voltageV: 230 }] }, sources };
}

const solve = ({ network, sources }: Case): number => prepareNetwork(network).solve(sources).voltageV[1]!;

/** Median milliseconds of one turn over many, each case anew. */
function medianMs(cases: Case[], turns: number): number {
  const timesMs: number[] = [];
  let sum = 0;
  for (let turn = 0; turn < turns; turn++) {
    const each = cases[turn % cases.length]!;
    timesMs.push(timedMs(() => (sum += solve(each))));
  }
  if (!Number.isFinite(sum)) throw new Error("a network was not solved");
  return quantile(timesMs, 0.5);
}

/** Milliseconds ngspice takes for one operating point inside one process: a long run less a run of none. */
function ngspiceMs(cases: Case[], turns: number): number {
  const folder = mkdtempSync(join(tmpdir(), "ngspice-"));
  try {
    cases.forEach(({ network, sources }, index) => {
      writeFileSync(join(folder, `case-${index}.cir`), netlist(network, sources));
    });
    const runMs = (times: number): number => {
      const script = cases.flatMap((_, index) => {
        const loop = times > 0 ? [`repeat ${times}`, "op", "destroy all", "end"] : [];
        return [`source ${join(folder, `case-${index}.cir`)}`, ...loop, "remcirc"];
      });
      writeFileSync(
        join(folder, "all.cir"),
        ["all", ".control", ...script, "quit", ".endc", ".end", ""].join("\n"),
      );
      const startMs = performance.now();
      execFileSync("ngspice", ["-b", join(folder, "all.cir")], { stdio: ["ignore", "ignore", "ignore"] });
      return performance.now() - startMs;
    };
    runMs(0);
    const emptyMs = runMs(0);
    return (runMs(turns) - emptyMs) / (turns * cases.length);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Two hours on a ring of ten points with four spurs, a load switched every ten minutes. */
function loadRunMs(seed: number): number {
  const random = seeded(seed);
  const stations = [
    {
      id: "way-1",
      kind: "way",
      settings: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32 },
    },
    ...Array.from({ length: 14 }, (_, index) => ({ id: `socket-${index + 1}`, kind: "socket-outlet" })),
  ];
  const lengthM = (): number => Math.round(20 + 100 * random()) / 10;
  const cable = (from: string, to: string) => ({ from, to, csaMm2: 2.5, lengthM: lengthM(), method: "C" });
  const cables = [
    cable("way-1.a", "socket-1.a"),
    ...Array.from({ length: 9 }, (_, index) => cable(`socket-${index + 1}.b`, `socket-${index + 2}.a`)),
    cable("socket-10.b", "way-1.b"),
    ...[11, 12, 13, 14].map((spur) => cable(`socket-${spur - 9}.c`, `socket-${spur}.a`)),
  ];
  const wiring = wiringSchema.parse({ version: 1, stations, cables });
  const loads = Array.from({ length: 12 }, (_, index) => ({
    id: `load-${index}`,
    station: `socket-${1 + Math.floor(14 * random())}` as StationId,
    powerW: 200 + 2000 * random(),
  }));
  const programme = loads.map(({ id }, index) => ({ atS: 600 * index, load: id, isOn: true }));
  return timedMs(() => {
    runLoads({ wiring, built: asBuilt(copperOf(wiring)), loads, programme, durationS: 7200, stepS: 30 });
  });
}

const micro = (ms: number): string => `${(ms * 1000).toFixed(0)} µs`;

/** Network solution against ngspice, its growth, and a load run of two hours. */
export async function lines(seed: number): Promise<SpeedLine[]> {
  const small = Array.from({ length: 20 }, (_, index) => house(60, seed + index));
  const large = Array.from({ length: 5 }, (_, index) => house(2000, seed + index));
  medianMs(small, 3000);
  const smallMs = medianMs(small, 3000);
  medianMs(large, 50);
  const largeMs = medianMs(large, 200);
  const result: SpeedLine[] = [];
  if (hasNgspice) {
    const spiceMs = ngspiceMs(small, 200);
    result.push({
      what: "network of 60 nodes, one operating point",
      reached: micro(smallMs),
      target: `at or under ngspice's ${micro(spiceMs)}`,
      ok: smallMs <= spiceMs,
    });
  } else {
    result.push({
      what: "network of 60 nodes, one operating point",
      reached: micro(smallMs),
      target: "ngspice's time in this run; it is not installed (apt-get install ngspice)",
      ok: false,
    });
  }
  result.push({
    what: "network of 2,000 nodes over one of 60",
    reached: `${(largeMs / smallMs).toFixed(1)} times`,
    target: "at most 60 times",
    ok: largeMs <= 60 * smallMs,
  });
  const runsMs = Array.from({ length: 15 }, (_, index) => loadRunMs(seed + index));
  const runMs = quantile(runsMs.slice(5), 0.5);
  result.push({
    what: "load run of two hours, 15 cables",
    reached: ms(runMs),
    target: "under 50 ms",
    ok: runMs < 50,
  });
  return result;
}
