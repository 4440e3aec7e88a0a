import { cableId, type StationId } from "../../../shared/board/ids.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import type { Requirement } from "./draft.ts";

/** What can be asked from the desk, in the order of the list. */
export const askKinds = [
  "served",
  "one-circuit",
  "ring",
  "radial",
  "in-ring",
  "unfused-spur",
  "through-fcu",
  "own-switch",
  "fuse",
  "sized",
  "thrift",
  "device",
  "kept",
] as const;
export type AskKind = (typeof askKinds)[number];

/** What is chosen in the form; what a kind does not ask of it is left out. */
export interface AskChoice {
  kind: AskKind;
  stations: readonly StationId[];
  way: StationId | undefined;
  fcu: StationId | undefined;
  by: StationId | undefined;
  mostA: number;
  ratingA: readonly number[];
}

/** Which parts of the form a kind asks for. */
export const partsOfKind: Record<
  AskKind,
  readonly ("stations" | "way" | "fcu" | "by" | "most" | "ratings")[]
> = {
  served: ["stations"],
  "one-circuit": ["stations", "way"],
  ring: ["way"],
  radial: ["way"],
  "in-ring": ["stations"],
  "unfused-spur": ["stations"],
  "through-fcu": ["stations", "fcu"],
  "own-switch": ["stations", "by"],
  fuse: ["stations", "most"],
  sized: ["way"],
  thrift: [],
  device: ["way", "ratings"],
  kept: [],
};

/** What the form asks for, as it stands in a scenario; undefined while something of it is not chosen. */
export function requirementOf(choice: AskChoice, draft: Scenario): Requirement | undefined {
  const { kind, way, fcu, by, mostA } = choice;
  const stations = [...choice.stations];
  const needsStations = partsOfKind[kind].includes("stations");
  if (needsStations && stations.length === 0) return undefined;
  switch (kind) {
    case "served":
    case "in-ring":
    case "unfused-spur":
      return { kind, stations };
    case "one-circuit":
      return { kind, stations, ...(way ? { way } : {}) };
    case "ring":
    case "radial":
      return way && { kind: "shape", of: way, shape: kind };
    case "through-fcu":
      return { kind, stations, ...(fcu ? { fcu } : {}) };
    case "own-switch":
      return { kind, stations, ...(by ? { by } : {}) };
    case "fuse":
      return { kind, stations, mostA };
    case "sized":
      return way && { kind, way };
    case "thrift": {
      const { cableCsaMm2: csaMm2 } = draft.parts;
      return csaMm2.length > 1 ? { kind, csaMm2: [...csaMm2] } : undefined;
    }
    case "device":
      return way && choice.ratingA.length > 0 ? { kind, way, ratingA: [...choice.ratingA] } : undefined;
    case "kept": {
      const cables = draft.asFound.cables.map(({ from, to }) => cableId(from, to));
      return cables.length > 0 ? { kind, cables } : undefined;
    }
  }
}
