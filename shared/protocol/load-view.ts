import type { CableId, EntryId, StationId } from "../board/ids.ts";
import type { HeatState } from "../electrical/accepted-zone.ts";
import type { RunEvent } from "../electrical/run-facts.ts";
import type { Text } from "../text/text.schema.ts";
import type { HouseAppliance } from "../trade/house-appliances.ts";

/** Something that can be switched on at a point. */
export interface ApplianceView {
  id: string;
  station: StationId;
  powerW: number;
  appliance?: HouseAppliance;
  name?: Text;
  isOn: boolean;
}

/** A cable at the moment that is looked at; what it may carry in practice alone. */
export interface LoadedCable {
  id: CableId;
  currentA: number;
  ratingA?: number;
}

/** A temperature in °C, at the soonest and at the latest, at each point of the run. */
export interface HeatView {
  cable: CableId;
  earlyC: number[];
  lateC: number[];
  longLifeC: number;
  faultLimitC: number;
  /** Above 70 °C for so long the standard accepts, between the full load and 1.45 times it. */
  zone: { fromC: number; toC: number; forS: number };
}

/** What the two hours come to if nothing more is switched; seconds. */
export interface LoadFacts {
  /** What opens first; without `latestS` it need not open. */
  first?: RunEvent;
  hottest?: { cable: CableId; earlyC: number; lateC: number; state: HeatState };
  /** When the warmest cable passes 70 °C, at the soonest. */
  over70S?: number;
  /** A cable gets too hot and nothing has to open. */
  isUnprotected: boolean;
  /** Devices that carry more than their rating and that nobody can time. */
  untimed: StationId[];
}

/** The circuit under load. Made for who stands at the step Load. */
export interface LoadView {
  way: StationId;
  isLive: boolean;
  nowS: number;
  appliances: ApplianceView[];
  cables: LoadedCable[];
  devices: {
    station: StationId;
    currentA: number;
    ratingA?: number;
    state: "closed" | "may-be-open" | "open";
  }[];
  /** The two legs of each ring: what flows into each end, and the first one's part of both. */
  legs: { ends: [EntryId, EntryId]; currentA: [number, number]; firstPercent: number }[];
  /** Practice alone. */
  heat?: HeatView;
  facts?: LoadFacts;
}
