import { cableId } from "../board/ids.ts";
import type { FieldProblem } from "../reading/problem.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";
import type { Built, Scenario } from "./scenario.schema.ts";

function answerSettings(field: string, built: Built, scenario: Scenario): FieldProblem[] {
  const offered: Partial<Record<keyof StationSettings, readonly number[] | undefined>> = {
    deviceRatingA: scenario.parts.deviceRatingA,
    fuseRatingA: scenario.parts.fuseRatingA,
  };
  return Object.entries(built.settings ?? {}).flatMap(([id, settings]) => {
    const station = scenario.stations.find((one) => one.id === id);
    if (!station) return [];
    return Object.entries(settings).flatMap(([name, value]): FieldProblem[] => {
      const key = name as keyof StationSettings;
      const at = `${field}.settings.${id}.${key}`;
      if (!station.chosen?.some((one) => one === key))
        return [
          {
            field: at,
            message: "the learner cannot choose it here",
            remedy: `Add ${key} to what is chosen at ${id}, or fix it in the station's settings.`,
          },
        ];
      const parts = offered[key];
      if (!parts || parts.includes(Number(value))) return [];
      return [
        { field: at, message: `${value} is not among the parts`, remedy: `Parts offer ${parts.join(", ")}.` },
      ];
    });
  });
}

/** Complains of an answer that sets or uses what the scenario does not offer the learner. */
export function answerProblems(field: string, built: Built, scenario: Scenario): FieldProblem[] {
  const asFound = new Map(scenario.asFound.cables.map((cable) => [cableId(cable.from, cable.to), cable]));
  const sizes = scenario.parts.cableCsaMm2;
  return [
    ...answerSettings(field, built, scenario),
    ...built.cables.flatMap(({ from, to, csaMm2 }, index): FieldProblem[] => {
      const at = `${field}.cables[${index}].csaMm2`;
      if (csaMm2 === undefined)
        return [{ field: at, message: "it is missing", remedy: "An answer states the size of every cable." }];
      if (sizes.includes(csaMm2) || asFound.get(cableId(from, to))?.csaMm2 === csaMm2) return [];
      return [
        {
          field: at,
          message: `${csaMm2} mm² is not among the parts`,
          remedy: `Parts offer ${sizes.join(", ")}.`,
        },
      ];
    }),
  ];
}
