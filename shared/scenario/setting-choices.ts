import { curves } from "../board/station-settings.schema.ts";
import { accessoryRatings } from "../trade/accessory-ratings.ts";
import type { StrippedScenario } from "./scenario.schema.ts";

/** What a learner may choose: the settings of stations, and the size of a cable. */
type ChosenKey = NonNullable<StrippedScenario["stations"][number]["chosen"]>[number] | "csaMm2";

const ratingChoicesA = [...new Set(accessoryRatings.map(({ ratingA }) => ratingA))].sort((a, b) => a - b);

/** What may be chosen for a setting in a scenario. */
export function choicesOf(scenario: StrippedScenario, key: ChosenKey): (string | number | boolean)[] {
  switch (key) {
    case "csaMm2":
      return scenario.parts.cableCsaMm2;
    case "deviceRatingA":
      return scenario.parts.deviceRatingA ?? [];
    case "fuseRatingA":
      return scenario.parts.fuseRatingA ?? [];
    case "deviceCurve":
      return [...curves];
    case "switched":
      return [true, false];
    case "ratingA":
      return ratingChoicesA;
  }
}
