import type { StationKind } from "./station-kinds.ts";
import type { StationSettings } from "./station-settings.schema.ts";

type Key = keyof StationSettings;

const ofPoint: readonly Key[] = ["appliance", "litres", "makersFuseA", "inBathroom"];

/** Settings that mean something at a kind of station; any other there is a slip of whoever wrote the file. */
export const settingsByKind: Record<StationKind, readonly Key[]> = {
  way: ["deviceStandard", "deviceCurve", "deviceRatingA", "rcdMa", "floorAreaM2", "letThroughA2s"],
  "socket-outlet": ["gangs", "inBathroom"],
  "junction-box": ["ratingA"],
  fcu: ["fuseRatingA", "switched", "inBathroom"],
  "ceiling-rose": ofPoint,
  "plate-switch": ["switching", "poles", "ratingA", "inBathroom"],
  luminaire: ofPoint,
  isolator: ["ratingA", "poles", "inBathroom", "distanceToApplianceM"],
  "cooker-control": ["ratingA", "hasSocketOutlet", "distanceToApplianceM"],
  appliance: ofPoint,
};
