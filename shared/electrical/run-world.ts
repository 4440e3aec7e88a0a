import type { CableId, StationId } from "../board/ids.ts";
import { nodeId } from "../wiring/buses.ts";
import { supply } from "../trade/supply.ts";
import { defaults } from "../circuit/defaults.ts";
import type { Supply } from "../wiring/wiring.schema.ts";
import type { CopperLink } from "./copper.ts";
import { bandOfStation } from "./device-band.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { rcdOpening } from "./rcd-opening.ts";
import { type Edge, opensInS, progressAfter, type TripProgress } from "./trip-progress.ts";
import { loadNodes, type WiringSolution, wiringNetwork, wiringSolution } from "./wiring-network.ts";

export interface RunLoad {
  id: string;
  station: StationId;
  powerW: number;
}

/** A device or fuse of the run. */
export interface RunDevice {
  station: StationId;
  kind: "device" | "fuse";
  ratingA: number | undefined;
  /** False where what it is is not stated, so that nobody can say when it opens. */
  hasBand: boolean;
  /** True where its band is our reading of what is tabulated, not gates of its standard. */
  isEstimate: boolean;
  link: CopperLink;
  linkIndex: number;
  /** Its neutral and the RCD it has, for the residual current. */
  neutralIndex: number;
  rcdMa: number;
}

/** What opened something: too much current, or the RCD. */
export type Opening = { device: RunDevice; atS: number; by: "current" | "rcd" };

/** The devices and fuses of what is built, with what is known of each. */
export function runDevices(built: AsBuilt): RunDevice[] {
  return built.links.flatMap((link, linkIndex): RunDevice[] => {
    if (link.kind !== "device" && link.kind !== "fuse") return [];
    const { station, kind } = link;
    const settings = built.stations.get(station)?.settings;
    const neutral = nodeId(station, "N");
    const band = bandOfStation(settings, kind);
    return [
      {
        station,
        kind,
        ratingA: kind === "device" ? settings?.deviceRatingA : settings?.fuseRatingA,
        hasBand: band !== undefined,
        isEstimate: band?.isEstimate ?? false,
        link,
        linkIndex,
        neutralIndex: built.links.findIndex((each) => each.kind === "bar" && each.to === neutral),
        rcdMa: kind === "device" ? (settings?.rcdMa ?? defaults.rcdMa) : 0,
      },
    ];
  });
}

/** Leaks above this carry less than a hundredth of a milliamp and are left out of a run. */
const leastLeakOhm = 20e6;

/**
 * One course of events: every device opens at one edge of its band. Loads are impedances (230² / P); the network is
 * solved anew whenever a load is switched, a device opens or a conductor melts, with each cable at the temperature it
 * then has.
 */
export class RunWorld {
  solution: WiringSolution;
  readonly openings: Opening[] = [];
  readonly isOpen: boolean[];
  /** Cables whose conductors have melted through, and when. */
  readonly melted = new Map<CableId, number>();
  #progress: TripProgress[];
  /** For how long residual current has been enough for the RCD, by device; 0 where it is not. */
  #residualForS: number[];

  constructor(
    readonly built: AsBuilt,
    readonly devices: readonly RunDevice[],
    readonly edge: Edge,
    readonly conditions: { supply: Supply; positions: ReadonlyMap<StationId, 0 | 1> },
  ) {
    this.isOpen = devices.map(() => false);
    this.#progress = devices.map(({ station, kind }) => ({
      band: bandOfStation(built.stations.get(station)?.settings, kind),
      part: 0,
    }));
    this.#residualForS = devices.map(() => 0);
    this.solution = this.#solve([], () => defaults.ambientC);
  }

  /** Solves with these loads on. */
  switchTo(loads: readonly RunLoad[], temperatureC: (cable: CableId) => number): void {
    this.solution = this.#solve(loads, temperatureC);
  }

  currentA({ linkIndex }: RunDevice): number {
    return Math.abs(this.solution.linkA[linkIndex]!);
  }

  /** Seconds until something opens if nothing is switched; Infinity where nothing does. */
  nextOpeningInS(): number {
    let nextS = Infinity;
    this.devices.forEach((device, index) => {
      if (this.isOpen[index]) return;
      const byCurrentS = opensInS(this.#progress[index]!, this.edge, this.currentA(device));
      nextS = Math.min(nextS, byCurrentS, this.#rcdInS(index));
    });
    return nextS;
  }

  /** Lets time pass in which nothing is switched, and opens what is due at its end. True where something opened. */
  pass(durationS: number, nowS: number): boolean {
    let hasOpened = false;
    this.devices.forEach((device, index) => {
      if (this.isOpen[index]) return;
      const isRcdDue = this.#rcdInS(index) <= durationS;
      this.#residualForS[index] =
        this.#rcdTakesS(index) < Infinity ? this.#residualForS[index]! + durationS : 0;
      const after = progressAfter(this.#progress[index]!, this.edge, this.currentA(device), durationS);
      this.#progress[index] = after;
      if (after.part < 1 - 1e-12 && !isRcdDue) return;
      this.isOpen[index] = true;
      hasOpened = true;
      this.openings.push({ device, atS: nowS, by: isRcdDue ? "rcd" : "current" });
    });
    return hasOpened;
  }

  /** Seconds the RCD takes at the residual current there is, at this edge of its band; Infinity where it holds. */
  #rcdTakesS(index: number): number {
    const { linkIndex, neutralIndex, rcdMa } = this.devices[index]!;
    if (rcdMa === 0 || neutralIndex < 0) return Infinity;
    const { linkA } = this.solution;
    const { earliestS, latestS } = rcdOpening(rcdMa, Math.abs(linkA[linkIndex]! + linkA[neutralIndex]!));
    return this.edge === "earliest" ? earliestS : latestS;
  }

  #rcdInS(index: number): number {
    return Math.max(0, this.#rcdTakesS(index) - this.#residualForS[index]!);
  }

  #solve(loads: readonly RunLoad[], temperatureC: (cable: CableId) => number): WiringSolution {
    const { built } = this;
    const impedances = loads.flatMap(({ station, powerW }) => {
      const nodes = loadNodes(built, station);
      const resistanceOhm = supply.nominalV ** 2 / powerW;
      return nodes ? [{ from: nodes.lineNode, to: nodes.neutralNode, resistanceOhm }] : [];
    });
    for (const { one, two, resistanceOhm } of built.leaks) {
      if (resistanceOhm > leastLeakOhm) continue;
      const [from, to] = [built.conductors[one]!.fromNode, built.conductors[two]!.fromNode];
      if (from !== to) impedances.push({ from, to, resistanceOhm });
    }
    const conductors = built.conductors.map((conductor) =>
      this.melted.has(conductor.cable) && conductor.core !== "earth"
        ? { ...conductor, jointOhm: Infinity }
        : conductor,
    );
    const net = wiringNetwork(
      { ...built, conductors },
      {
        ...this.conditions,
        temperatureC,
        impedances,
        openLinks: new Set(this.devices.filter((_, index) => this.isOpen[index]).map(({ link }) => link)),
      },
    );
    return wiringSolution(net, net.open);
  }
}
