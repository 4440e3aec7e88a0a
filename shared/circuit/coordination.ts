import type { CableId, StationId } from "../board/ids.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import type { CableModel, CircuitModel, Upstream } from "./model.ts";

/** How a cable stands to the device or fuse before it; currents in amperes. */
export type Coordination =
  | { is: "protected" }
  /** Iz is below In; for a rewireable fuse alone, 0.725 Iz is. */
  | { is: "underrated" | "semi-enclosed"; deviceA: number; ratingA: number; allowedA: number }
  | { is: "unknown"; subject: CableId | StationId; field: string };

/** What a rewireable fuse leaves of Iz, and 1 for every other device; undefined where its kind is not said. */
export const overloadFactor = (
  { stations }: Pick<CircuitModel, "stations">,
  upstream: Upstream,
): number | undefined => {
  if (upstream.kind === "fuse") return 1;
  const standard = stations.get(upstream.station)?.settings?.deviceStandard;
  return standard === undefined ? undefined : standard === "BS 3036" ? overloadLimits.semiEnclosedFactor : 1;
};

/**
 * Whether cable of a rating carries all that a device lets it carry for long: Iz >= In, or 0.725 Iz >= In behind a
 * rewireable fuse. Undefined where a value is not known and would decide.
 */
export const carriesDevice = (
  ratingA: number | undefined,
  deviceA: number | undefined,
  factor: number | undefined,
): boolean | undefined => {
  if (ratingA === undefined || deviceA === undefined) return undefined;
  if (ratingA < deviceA) return false;
  const isSurely = ratingA * (factor ?? overloadLimits.semiEnclosedFactor) >= deviceA;
  return isSurely || (factor === undefined ? undefined : false);
};

/**
 * The most that a load which could draw `demandA` makes a cable carry for long, in amperes of Iz that it wants: the
 * device ends it at In, a rewireable fuse only where a cable of In / 0.725 would be full.
 */
export const worstThroughA = (demandA: number, deviceA: number, factor: number): number =>
  Math.min(demandA, deviceA / factor);

/**
 * Whether the device before a cable protects it from overload: In <= Iz, and In <= 0.725 Iz for a rewireable fuse
 * (BS 7671 433.1.1, 433.1.202). Where the kind of device is not said, only what would not matter is passed.
 */
export const coordination = (model: CircuitModel, cable: CableModel): Coordination => {
  const { upstream, ratingA } = cable;
  if (!upstream) return { is: "protected" };
  const { ratingA: deviceA, station, kind } = upstream;
  if (ratingA === undefined)
    return { is: "unknown", subject: cable.id, field: cable.ratingLacks ?? "csaMm2" };
  if (deviceA === undefined)
    return { is: "unknown", subject: station, field: kind === "fuse" ? "fuseRatingA" : "deviceRatingA" };
  const leastAllowedA = ratingA * overloadLimits.semiEnclosedFactor;
  if (deviceA <= leastAllowedA) return { is: "protected" };
  if (deviceA > ratingA) return { is: "underrated", deviceA, ratingA, allowedA: ratingA };
  const factor = overloadFactor(model, upstream);
  if (factor === undefined) return { is: "unknown", subject: station, field: "deviceStandard" };
  const allowedA = ratingA * factor;
  return deviceA <= allowedA ? { is: "protected" } : { is: "semi-enclosed", deviceA, ratingA, allowedA };
};
