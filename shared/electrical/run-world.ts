import type { CableId, StationId } from "../board/ids.ts";
import { nodeId } from "../wiring/buses.ts";
import { disconnectingDevice } from "../trade/disconnecting-device.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import { supply } from "../trade/supply.ts";
import { defaults } from "../circuit/defaults.ts";
import type { Station, Supply } from "../wiring/wiring.schema.ts";
import type { CopperLink } from "./copper.ts";
import { breakerBand, type DeviceBand, fuseBand } from "./device-band.ts";
import type { AsBuilt } from "./hidden-faults.ts";
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
  /** False where its standard has no gates for it, so that nobody can say when it opens. */
  hasBand: boolean;
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
    return [
      {
        station,
        kind,
        ratingA: kind === "device" ? settings?.deviceRatingA : settings?.fuseRatingA,
        hasBand: bandOf(built.stations.get(station), kind) !== undefined,
        link,
        linkIndex,
        neutralIndex: built.links.findIndex((each) => each.kind === "bar" && each.to === neutral),
        rcdMa: kind === "device" ? (settings?.rcdMa ?? defaults.rcdMa) : 0,
      },
    ];
  });
}

function bandOf(station: Station | undefined, kind: "device" | "fuse"): DeviceBand | undefined {
  const { deviceStandard, deviceCurve, deviceRatingA, fuseRatingA } = station?.settings ?? {};
  if (kind === "fuse") return fuseRatingA === undefined ? undefined : fuseBand(fuseRatingA);
  const device = deviceStandard && disconnectingDevice(deviceStandard, deviceCurve);
  const isBreaker = device === "B" || device === "C" || device === "D";
  return isBreaker && deviceRatingA !== undefined ? breakerBand(device, deviceRatingA) : undefined;
}

/** Leaks above this carry less than a hundredth of a milliamp and are left out of a run. */
const leastLeakOhm = 20e6;

/**
 * One course of events: every device opens at one edge of its band. Loads are impedances (230² / P); the network is
 * solved anew whenever a load is switched or a device opens, with each cable at the temperature it then has.
 */
export class RunWorld {
  solution: WiringSolution;
  readonly openings: Opening[] = [];
  readonly isOpen: boolean[];
  #progress: TripProgress[];
  /** Since when residual current has been above the RCD's rating, by device; Infinity where it is not. */
  #residualForS: number[];

  constructor(
    readonly built: AsBuilt,
    readonly devices: readonly RunDevice[],
    readonly edge: Edge,
    readonly conditions: { supply: Supply; positions: ReadonlyMap<StationId, 0 | 1> },
  ) {
    this.isOpen = devices.map(() => false);
    this.#progress = devices.map(({ station, kind }) => ({
      band: bandOf(built.stations.get(station), kind),
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
      this.#residualForS[index] = this.#isResidual(index) ? this.#residualForS[index]! + durationS : 0;
      const after = progressAfter(this.#progress[index]!, this.edge, this.currentA(device), durationS);
      this.#progress[index] = after;
      if (after.part < 1 - 1e-12 && !isRcdDue) return;
      this.isOpen[index] = true;
      hasOpened = true;
      this.openings.push({ device, atS: nowS, by: isRcdDue ? "rcd" : "current" });
    });
    return hasOpened;
  }

  #isResidual(index: number): boolean {
    const { linkIndex, neutralIndex, rcdMa } = this.devices[index]!;
    if (rcdMa === 0 || neutralIndex < 0) return false;
    const { linkA } = this.solution;
    return Math.abs(linkA[linkIndex]! + linkA[neutralIndex]!) * 1000 >= rcdMa;
  }

  /** An RCD may open as soon as its rated residual current flows, and has opened after 300 ms (BS 7671 643.7.1). */
  #rcdInS(index: number): number {
    if (!this.#isResidual(index)) return Infinity;
    const takesS = this.edge === "earliest" ? 0 : rcdLimits.atRatedMostMs / 1000;
    return Math.max(0, takesS - this.#residualForS[index]!);
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
    const net = wiringNetwork(built, {
      ...this.conditions,
      temperatureC,
      impedances,
      openLinks: new Set(this.devices.filter((_, index) => this.isOpen[index]).map(({ link }) => link)),
    });
    return wiringSolution(net, net.open);
  }
}
