import type { StationId } from "../../shared/board/ids.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";

/** What a scenario calls its stations in a language. */
export const stationNames = (scenario: StrippedScenario, language: Language): Map<StationId, string> =>
  new Map(scenario.stations.flatMap(({ id, name }) => (name ? [[id, name[language]] as const] : [])));
