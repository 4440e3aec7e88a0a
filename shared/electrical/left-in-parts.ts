import type { StationId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import { leftInParts } from "../trade/left-in-parts.ts";
import { supply } from "../trade/supply.ts";
import type { LeftInPart, Load, Station } from "../wiring/wiring.schema.ts";

/** The functions of the meter that send current through what was left in. */
export type DeadFunction = "low-ohms" | "insulation";

const electronicAppliances: ReadonlySet<string> = new Set(["boiler", "extractor-fan"]);

/**
 * What of a task lies between line and neutral and can be left in while its circuit is tested: stated loads, lamps,
 * neon indicators of FCUs and cooker controls, electronic parts of a boiler or a fan. In the order of the stations.
 */
export function partsThatCanBeIn(
  stations: readonly Pick<Station, "id" | "kind" | "settings">[],
  loads: readonly Pick<Load, "station">[],
): LeftInPart[] {
  const loaded = new Set(loads.map(({ station }) => station));
  return stations.flatMap(({ id, kind, settings }): LeftInPart[] => {
    if (kind === "luminaire" || (kind === "ceiling-rose" && loaded.has(id)))
      return [{ station: id, part: "lamp" }];
    if (kind === "fcu" || kind === "cooker-control") return [{ station: id, part: "neon" }];
    if (kind === "appliance" && electronicAppliances.has(settings?.appliance ?? ""))
      return [{ station: id, part: "electronics" }];
    return loaded.has(id) ? [{ station: id, part: "load" }] : [];
  });
}

/**
 * What the meter sees of the parts that are in, in ohms: loads and lamps at any function as 230² / P, a neon indicator
 * and electronic parts at the high voltage of the insulation test alone.
 */
export function leftInOhm(
  partsIn: readonly LeftInPart[],
  loads: readonly Pick<Load, "station" | "powerW">[],
  at: DeadFunction,
): { station: StationId; resistanceOhm: number }[] {
  return partsIn.flatMap(({ station, part }) => {
    if (part === "load" || part === "lamp") {
      const stated = loads.filter((load) => load.station === station);
      const powerW =
        stated.length > 0 ? stated.reduce((sumW, load) => sumW + load.powerW, 0) : defaults.lampW;
      return [{ station, resistanceOhm: supply.nominalV ** 2 / powerW }];
    }
    if (at === "low-ohms") return [];
    const megohm = part === "neon" ? leftInParts.neonMegohm : leftInParts.electronicsMegohm;
    return [{ station, resistanceOhm: megohm * 1e6 }];
  });
}

/** The voltage an insulation test is made at: 250 V where electronic parts were left in, else 500 V (BS 7671 643.3). */
export const insulationTestV = (partsIn: readonly LeftInPart[], usualV: number): number =>
  partsIn.some(({ part }) => part === "electronics") ? leftInParts.sensitiveTestV : usualV;
