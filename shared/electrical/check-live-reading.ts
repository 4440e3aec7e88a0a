import type { StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { defaults } from "../circuit/defaults.ts";
import { rcdTimes } from "../trade/rcd-times.ts";
import { simulatedLive } from "../trade/simulated-live.ts";
import { supply } from "../trade/supply.ts";
import { circuitDevice } from "./circuit-device.ts";
import { measuredLoopLimit, isTouchVoltageSafe } from "./fault-loop.ts";
import { zoneTreeOf } from "./zone-tree.ts";

/** The live tests of a circuit, in their order. */
export const liveTests = ["zs", "fault-current", "rcd-half", "rcd-one", "rcd-five"] as const;
export type LiveTest = (typeof liveTests)[number];

/** What the meter shows of a live test. `isNoTrip`: the RCD held. */
export interface LiveValue {
  impedanceOhm?: number | undefined;
  currentA?: number | undefined;
  tripMs?: number | undefined;
  isOverRange?: boolean | undefined;
  isNoTrip?: boolean | undefined;
}

/** The limit a live reading is held to, for the working. */
export type LiveLimit =
  | { by: "zs"; limitOhm: number; factor: number; coldLimitOhm: number }
  | { by: "touch"; rcdMa: number; mostOhm: number }
  | { by: "fault-current"; mostA: number }
  | { by: "rcd"; mostMs: number | undefined };

/**
 * The limit of a live test on a way's circuit. Zs, measured cold, is held to 0.8 of the device's limit, on TT with an
 * RCD to 50 V over its rating; the fault current to what the device can break; the RCD to its times, and at half its
 * rating it must hold. Undefined where nobody has said what the device is.
 */
export function liveLimit(model: CircuitModel, way: StationId, test: LiveTest): LiveLimit | undefined {
  if (test === "fault-current") return { by: "fault-current", mostA: simulatedLive.mostFaultA };
  if (test !== "zs") {
    const multiple = test === "rcd-one" ? 1 : 5;
    const row = rcdTimes.find(({ type, fromMultiple }) => type === "general" && fromMultiple === multiple);
    return { by: "rcd", mostMs: test === "rcd-half" ? undefined : row?.mostMs };
  }
  const circuit = zoneTreeOf(model).circuits.find(({ root }) => root.ways.includes(way));
  const device = circuit && circuitDevice(model, circuit.root, circuit.zones).device;
  if (!device) return undefined;
  if (device.isTt && device.rcdMa > 0) {
    const mostOhm = Math.floor(50_000 / device.rcdMa);
    return { by: "touch", rcdMa: device.rcdMa, mostOhm };
  }
  const { limitOhm: coldLimitOhm } = measuredLoopLimit(0, device);
  if (coldLimitOhm === undefined) return undefined;
  const factor = supply.measuredZsFactor;
  return { by: "zs", limitOhm: coldLimitOhm / factor, factor, coldLimitOhm };
}

/** Whether a live reading passes; undefined where its limit is not known. */
export function isLivePass(
  model: CircuitModel,
  way: StationId,
  test: LiveTest,
  value: LiveValue,
): boolean | undefined {
  const limit = liveLimit(model, way, test);
  if (!limit) return undefined;
  switch (limit.by) {
    case "zs":
      return value.impedanceOhm !== undefined && value.impedanceOhm <= limit.coldLimitOhm;
    case "touch":
      return value.impedanceOhm !== undefined && isTouchVoltageSafe(value.impedanceOhm, limit.rcdMa);
    case "fault-current":
      return value.currentA !== undefined && value.currentA <= limit.mostA;
    case "rcd":
      if (limit.mostMs === undefined) return value.isNoTrip === true;
      return value.tripMs !== undefined && value.tripMs <= limit.mostMs;
  }
}

/** Rated residual current of the RCD that covers a way in milliamperes; 0 where there is none. */
export const rcdMaOf = (model: CircuitModel, way: StationId): number =>
  model.stations.get(way)?.settings?.rcdMa ?? defaults.rcdMa;
