import type { StationId } from "../../shared/board/ids.ts";
import { defaults } from "../../shared/circuit/defaults.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import { type HouseAppliance, houseAppliances } from "../../shared/trade/house-appliances.ts";

/** Something that can be switched on at a point. */
export interface Appliance {
  /** The point and what it is there, such as `socket-1/kettle`. */
  id: string;
  station: StationId;
  powerW: number;
  /** Of the general set of a house; what the task states has its own name. */
  appliance?: HouseAppliance;
  name?: Text;
}

/** How many plugs a point takes; Infinity where nothing is plugged in, as at a lamp. */
export const plugsAt = (scenario: StrippedScenario, station: StationId): number => {
  const at = scenario.stations.find(({ id }) => id === station);
  return at?.kind === "socket-outlet" ? (at.settings?.gangs ?? 2) : Infinity;
};

/** What can be switched on at each point of a task: what it states, at socket outlets what any house plugs in. */
export function appliancesOf({ stations, loads }: StrippedScenario): Appliance[] {
  return stations.flatMap(({ id: station, kind }) => {
    const stated = loads.flatMap((load, index): Appliance[] =>
      load.station === station
        ? [
            {
              id: `${station}/stated-${index}`,
              station,
              powerW: load.powerW,
              ...(load.name ? { name: load.name } : {}),
            },
          ]
        : [],
    );
    const isLamp = stated.length === 0 && kind === "luminaire";
    const lamp: Appliance[] = isLamp
      ? [{ id: `${station}/lamp`, station, powerW: defaults.lampW, appliance: "lamp" }]
      : [];
    const house =
      kind === "socket-outlet"
        ? houseAppliances.map(({ appliance, powerW }) => ({
            ...{ id: `${station}/${appliance}`, station },
            ...{ powerW, appliance },
          }))
        : [];
    return [...stated, ...lamp, ...house];
  });
}
