import type { CableId } from "../board/ids.ts";
import { cableId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import { installedCapacityA } from "../trade/capacity.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { type Bound, cableHeat, type CableHeat, temperatureAfterC, timeToReachS } from "./heat.ts";
import type { WiringSolution } from "./wiring-network.ts";

/** A cable of the run, with its heat model where its size and way of running have one. */
export interface RunCable {
  id: CableId;
  ratingA: number | undefined;
  ambientC: number;
  heat: CableHeat | undefined;
  /** Places of its loaded cores among the conductors. */
  cores: number[];
}

/** The cables of what is built, in the order they are stated. */
export function runCables(built: AsBuilt, specs: readonly CableSpec[]): RunCable[] {
  const cores = new Map<CableId, number[]>();
  built.conductors.forEach(({ cable, core }, index) => {
    const known = cores.get(cable) ?? [];
    if (core !== "earth") known.push(index);
    cores.set(cable, known);
  });
  const cables = new Map<CableId, RunCable>();
  for (const spec of specs) {
    const {
      csaMm2,
      method = defaults.method,
      ambientC = defaults.ambientC,
      groupedCircuits,
      insulationMm,
    } = spec;
    const id = cableId(spec.from, spec.to);
    const installation = csaMm2 === undefined ? undefined : { csaMm2, method, groupedCircuits, insulationMm };
    cables.set(id, {
      id,
      ratingA: installation && installedCapacityA({ ...installation, ambientC }),
      ambientC,
      heat: installation && cableHeat(installation, spec.cpcCsaMm2),
      cores: cores.get(id) ?? [],
    });
  }
  return [...cables.values()];
}

/** Root mean square of what the two loaded cores carry: the same heat as that current in both. */
export function heatingCurrentA({ cores }: RunCable, { conductorA }: WiringSolution): number {
  let sum = 0;
  for (const index of cores) sum += conductorA[index]! ** 2;
  return Math.sqrt(sum / 2);
}

/** Temperatures of all cables of a run at one bound of the band, and when each first passed the lines that matter. */
export class CableHeating {
  readonly temperatureC: Float64Array;
  readonly mostC: Float64Array;
  /** Seconds, by line in °C and place of the cable; Infinity where it was never reached. */
  readonly reachedS: Map<number, Float64Array>;

  constructor(
    readonly cables: readonly RunCable[],
    readonly bound: Bound,
    linesC: readonly number[],
  ) {
    this.temperatureC = Float64Array.from(cables, ({ ambientC }) => ambientC);
    this.mostC = this.temperatureC.slice();
    this.reachedS = new Map(linesC.map((lineC) => [lineC, new Float64Array(cables.length).fill(Infinity)]));
  }

  /** Seconds until the first conductor melts if the currents stay as they are, and the cables it happens to. */
  nextMelting(solution: WiringSolution): { inS: number; cables: CableId[] } {
    let inS = Infinity;
    let melting: CableId[] = [];
    this.cables.forEach((cable, index) => {
      const { id, heat, ambientC } = cable;
      if (!heat) return;
      const heating = { currentA: heatingCurrentA(cable, solution), ambientC };
      const startC = this.temperatureC[index]!;
      const ownS =
        heating.currentA === 0
          ? Infinity
          : timeToReachS(heat, this.bound, heating, startC, copperHeat.meltsAtC);
      if (ownS > inS || ownS === Infinity) return;
      melting = ownS === inS ? [...melting, id] : [id];
      inS = ownS;
    });
    return { inS, cables: melting };
  }

  pass(solution: WiringSolution, durationS: number, fromS: number): void {
    this.cables.forEach((cable, index) => {
      const { heat, ambientC } = cable;
      if (!heat || durationS === 0) return;
      const startC = this.temperatureC[index]!;
      const heating = { currentA: heatingCurrentA(cable, solution), ambientC };
      const endC = Math.min(
        copperHeat.meltsAtC,
        temperatureAfterC(heat, this.bound, heating, startC, durationS),
      );
      this.temperatureC[index] = endC;
      this.mostC[index] = Math.max(this.mostC[index]!, endC);
      for (const [lineC, times] of this.reachedS) {
        if (times[index]! < Infinity || endC < lineC) continue;
        times[index] = fromS + timeToReachS(heat, this.bound, heating, startC, lineC);
      }
    });
  }

  of(cable: CableId): number {
    const index = this.cables.findIndex(({ id }) => id === cable);
    return index < 0 ? defaults.ambientC : this.temperatureC[index]!;
  }
}
